import { checkInputs, demandChecked, wholes } from './check-inputs.js';
import { evaluate } from './evaluate.js';
import { choices, measures, type Choice, type ClockInputs, type Measure } from './inputs.js';
import { rulesOf } from './rules.js';
import { usualSteps } from './sensitivity-steps.js';
import { stateIds, type StateId } from './states.js';

/** One input moved, all else left, and what it does to the likely time of a state. */
export interface Move {
  readonly input: Measure | Choice;
  readonly from: number | string;
  readonly to: number | string;
  /** Likely time after the move over the likely time before it. */
  readonly factor: number;
}

/** What moves one state, the strongest first. */
export interface StateMoves {
  readonly state: StateId;
  readonly moves: readonly Move[];
}

/**
 * Which change of recipe, room or mould would move which state most.
 *
 * Each measure goes one usual step (`usualSteps`) down and up, cut short at the end of its accepted range and where
 * shares of one whole would exceed it; each choice but the process goes to each of its other values. What `checkInputs` would
 * refuse is not proposed, what leaves the likely time as it is is left out.
 *
 * @param inputs must have passed `checkInputs`
 * @returns for every state that any rule acts on its moves, by falling |ln factor|
 * @throws RangeError for inputs that `checkInputs` refuses: the caller has not asked it
 */
export function sensitivity(inputs: ClockInputs): StateMoves[] {
  demandChecked(inputs);
  const proposals = [...measureProposals(inputs), ...choiceProposals(inputs)].filter(
    ({ moved }) => checkInputs(moved).length === 0,
  );
  const ruled = stateIds.filter((state) => rulesOf[state].length > 0);
  return ruled.map((state) => ({ state, moves: movesOf(state, inputs, proposals) }));
}

interface Proposal {
  readonly input: Measure | Choice;
  readonly to: number | string;
  readonly moved: ClockInputs;
}

function measureProposals(inputs: ClockInputs): Proposal[] {
  return (Object.keys(measures) as Measure[]).flatMap((input) => {
    const { low } = measures[input];
    if (!(input in usualSteps)) return [];
    const { by } = usualSteps[input as keyof typeof usualSteps];
    const from = inputs[input];
    const down = Math.max(low, tidy(from - by));
    const up = Math.min(mostOf(input, inputs), tidy(from + by));
    const ends = [...(down < from ? [down] : []), ...(up > from ? [up] : [])];
    return ends.map((to) => ({ input, to, moved: { ...inputs, [input]: to } }));
  });
}

/** How far a measure can rise: to the end of its range, or until the shares of its whole make 100 %. */
function mostOf(input: Measure, inputs: ClockInputs): number {
  const rest = wholes
    .filter((parts) => parts.includes(input))
    .map((parts) => parts.reduce((sum, part) => (part === input ? sum : sum - inputs[part]), 100));
  return Math.min(measures[input].high, ...rest);
}

function choiceProposals(inputs: ClockInputs): Proposal[] {
  // What is cooked is another piece of work, no other choice for this one.
  const asked = (Object.keys(choices) as Choice[]).filter((input) => input !== 'process');
  return asked.flatMap((input) =>
    choices[input]
      .filter((to) => to !== inputs[input])
      .map((to) => ({ input, to, moved: { ...inputs, [input]: to } })),
  );
}

function movesOf(state: StateId, inputs: ClockInputs, proposals: readonly Proposal[]): Move[] {
  const now = evaluate(state, inputs).medianMin;
  return proposals
    .map(({ input, to, moved }) => {
      const factor = evaluate(state, moved).medianMin / now;
      return { input, from: inputs[input], to, factor };
    })
    .filter(({ factor }) => factor !== 1)
    .sort((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)));
}

/** Without the last digits that adding decimal fractions leaves behind. */
function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
