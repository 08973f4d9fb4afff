import {
  band,
  checkInputs,
  forecast,
  referenceInputs,
  states,
  type ClockInputs,
  type Forecast,
  type StateId,
} from '#clocks';
import { fatSharePercent, hardFattyAcidsPercent, oleicPercent } from '#chemistry';
import type { BatchPart, ClockForecast, Part, WorkshopFacts } from '#contract';
import type { Issue } from '#units';
import type { RunsInput } from './input.js';
import type { Batter, RunWorkings } from './workings.js';

/** Forecasts of one part's batch, by state. */
export type PartClocks = ReadonlyMap<StateId, Forecast>;

const BATTER: readonly StateId[] = ['light-trace', 'medium-trace', 'thick-trace', 'stiff'];
const SOAP: readonly StateId[] = [
  'holds-layer',
  'bonds-until',
  'firm',
  'pliable-until',
  'cuttable',
  'cuttable-until',
  'coat-turnable',
  'piping-skinned',
  'piping-firm',
  'cured',
];

/**
 * Forecasts every state of every part that has clocks, at this workshop's room.
 * @returns by part key; parts without clocks (decor) are absent
 */
export function forecastClocks(run: RunWorkings, workshop: WorkshopFacts): Map<string, PartClocks> {
  const clocks = new Map<string, PartClocks>();
  for (const part of run.design.parts) {
    if (part.kind === 'decor') continue;
    const inputs = inputsFor(part, run, workshop);
    const wanted: readonly StateId[] = part.kind === 'batch' ? [...BATTER, ...SOAP] : ['glaze-set'];
    clocks.set(part.key, new Map(wanted.map((state) => [state, forecast(state, inputs)])));
  }
  return clocks;
}

/**
 * Issues with values that no clock can be read for, such as a batter far colder than the room. Each stands at the
 * recipe it comes from, or at the room, with its path from the input's root.
 */
export function checkClockInputs(run: RunWorkings, input: RunsInput): Issue[] {
  return run.design.parts.flatMap((part) => {
    if (part.kind !== 'batch') return [];
    const recipe = input.recipes.findIndex((r) => r.key === part.recipe);
    return checkInputs(inputsFor(part, run, input.workshop)).map((issue) => {
      const [field = ''] = issue.path;
      return { ...issue, path: roomFields[field] ?? ['recipes', recipe, field] };
    });
  });
}

/** Where the clocks' quantities of the room stand in the input. */
const roomFields: Readonly<Record<string, readonly string[]>> = {
  roomTemperatureC: ['workshop', 'room', 'temperatureC'],
  roomHumidityPercent: ['workshop', 'room', 'humidityPercent'],
};

/** What is shown of a part's clocks: the batter's pace, and the states that the design waits for. */
export function shownClocks(run: RunWorkings, clocks: ReadonlyMap<string, PartClocks>): ClockForecast[] {
  return run.design.parts.flatMap((part) => {
    const waited = run.design.waits
      .filter((wait) => wait.part === part.key)
      .flatMap((wait) => [wait.opens, wait.closes])
      .filter((state): state is NonNullable<typeof state> => state !== undefined);
    const shown = new Set<StateId>(part.kind === 'batch' ? [...BATTER, ...waited, 'cured'] : waited);
    return [...(clocks.get(part.key) ?? new Map<StateId, Forecast>())]
      .filter(([state]) => shown.has(state))
      .map(([state, found]) => ({
        part: part.key,
        state,
        band: band(found),
        from: states[state].from,
        baseMin: found.baseMin,
        sigma: found.sigma,
        reasons: found.reasons.map((reason) => ({ ...reason })),
        beyond: [...found.beyond],
      }));
  });
}

function inputsFor(
  part: Exclude<Part, { kind: 'decor' }>,
  run: RunWorkings,
  workshop: WorkshopFacts,
): ClockInputs {
  // Melt-and-pour reads nothing but the room; the rest stands at the clocks' reference point.
  if (part.kind === 'melt-and-pour') return { ...referenceInputs, ...roomOf(workshop) };
  const recipe = run.recipes.get(part.recipe);
  if (recipe === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  return batchInputs(part, recipe, run, workshop);
}

function batchInputs(
  part: BatchPart,
  recipe: Batter,
  run: RunWorkings,
  workshop: WorkshopFacts,
): ClockInputs {
  const { fats } = run;
  const mould = part.mould === undefined ? undefined : run.moulds.get(part.mould);
  return {
    ...roomOf(workshop),
    lyeConcentrationPercent: recipe.lyeConcentrationPercent,
    sodiumLactatePercent: recipe.sodiumLactatePercent,
    saltPercent: recipe.saltPercent,
    sugarPercent: recipe.sugarPercent,
    hardFattyAcidsPercent: hardFattyAcidsPercent(recipe, fats),
    oleicPercent: oleicPercent(recipe, fats),
    castorPercent: fatSharePercent(recipe, fats, 'castor'),
    buttersPercent: fatSharePercent(recipe, fats, 'butter'),
    olivePomacePercent: fatSharePercent(recipe, fats, 'olive-pomace'),
    batterTemperatureC: recipe.batterTemperatureC,
    mould: mould?.kind ?? 'silicone-cavity',
    fragrance: recipe.fragrance?.behaviour ?? 'none',
    gel: recipe.gel,
    mixing: recipe.mixing,
  };
}

function roomOf(workshop: WorkshopFacts): Pick<ClockInputs, 'roomTemperatureC' | 'roomHumidityPercent'> {
  return { roomTemperatureC: workshop.room.temperatureC, roomHumidityPercent: workshop.room.humidityPercent };
}
