import type { Issue } from '#units';
import { choices, measures, type Choice, type ClockInputs, type Measure } from './inputs.js';

/** Rounded figures on suppliers' sheets add up to a little over the whole. */
const MOST_OF_WHOLE = 105;
/** Measures that are shares of one and the same whole. */
export const wholes: readonly (readonly [Measure, ...Measure[]])[] = [
  ['hardFattyAcidsPercent', 'oleicPercent', 'polyunsaturatedPercent'],
  ['castorPercent', 'buttersPercent', 'olivePomacePercent', 'lardPercent', 'freeAcidsPercent', 'waxPercent'],
];
/** A batter can be chilled, but the reaction warms it: further below the room than this is a slip. */
const MOST_BELOW_ROOM_C = 10;
/** Warmer batter turns to soap in the bowl: it is cooked, not poured. Common practice, no source. */
const WARMEST_UNCOOKED_C = 75;

/**
 * Refuses inputs that no batch can have, so that a slip of the finger does not become a forecast.
 * Being outside what a rule knows is not refused; the forecast says so.
 *
 * @returns one issue per offence, empty when all is well:
 *   `clocks.out-of-range` (a measure outside its range, or no number; batter above 75 °C that is not cooked),
 *   `clocks.unknown-choice`,
 *   `clocks.more-than-whole` (shares of one whole that exceed 105 % together),
 *   `clocks.batter-colder-than-room` (by more than 10 °C)
 */
export function checkInputs(inputs: ClockInputs): Issue[] {
  const single = [
    ...keysOf(measures).flatMap((key) => checkMeasure(key, inputs[key])),
    ...keysOf(choices).flatMap((key) => checkChoice(key, inputs[key])),
  ];
  // Sums and differences of values already refused would only repeat the complaint.
  return single.length > 0 ? single : checkTogether(inputs);
}

/** @throws RangeError for inputs that `checkInputs` refuses: the caller has not asked it */
export function demandChecked(inputs: ClockInputs): void {
  const issues = checkInputs(inputs);
  if (issues.length > 0)
    throw new RangeError(issues.map(({ code, path }) => `${code} at ${path.join('.')}`).join(', '));
}

function checkMeasure(key: Measure, value: number): Issue[] {
  const { unit, low, high } = measures[key];
  if (value >= low && value <= high) return [];
  return [
    {
      code: 'clocks.out-of-range',
      path: [key],
      value,
      accepted: { kind: 'range', low, high, unit },
      ...{ input: key, found: value, unit },
    },
  ];
}

function checkChoice(key: Choice, value: string): Issue[] {
  const values: readonly string[] = choices[key];
  if (values.includes(value)) return [];
  return [
    {
      code: 'clocks.unknown-choice',
      path: [key],
      value,
      accepted: { kind: 'one-of', values },
      input: key,
    },
  ];
}

function checkTogether(inputs: ClockInputs): Issue[] {
  const issues = wholes.flatMap((parts) => checkWhole(inputs, parts));
  const { batterTemperatureC: batter, roomTemperatureC: room, process } = inputs;
  if (process === 'cold' && batter > WARMEST_UNCOOKED_C) {
    issues.push({
      code: 'clocks.out-of-range',
      path: ['batterTemperatureC'],
      value: batter,
      accepted: { ...measures.batterTemperatureC, kind: 'range', high: WARMEST_UNCOOKED_C },
      ...{ input: 'batterTemperatureC', found: batter, unit: '°C' },
    });
  }
  if (batter < room - MOST_BELOW_ROOM_C) {
    issues.push({
      code: 'clocks.batter-colder-than-room',
      path: ['batterTemperatureC'],
      value: batter,
      accepted: { kind: 'range', low: room - MOST_BELOW_ROOM_C, unit: '°C' },
      ...{ batterC: batter, roomC: room },
    });
  }
  return issues;
}

function checkWhole(inputs: ClockInputs, parts: readonly [Measure, ...Measure[]]): Issue[] {
  const sum = parts.reduce((total, key) => total + inputs[key], 0);
  if (sum <= MOST_OF_WHOLE) return [];
  return [
    {
      code: 'clocks.more-than-whole',
      path: [parts[0]],
      value: sum,
      accepted: { kind: 'range', low: 0, high: 100, unit: '%' },
      ...{ inputs: parts, sum },
    },
  ];
}

function keysOf<K extends string>(record: Readonly<Record<K, unknown>>): K[] {
  return Object.keys(record) as K[];
}
