import type { ClockInputs } from './inputs.js';
import type { Rule, RuleId } from './rule.js';
import { ashRules } from './rules/ash.js';
import { batterRules } from './rules/batter.js';
import { cureRules } from './rules/cure.js';
import { hotProcessRules } from './rules/hot-process.js';
import { rebatchRules } from './rules/rebatch.js';
import { setRules } from './rules/set.js';
import { stateIds, states, type StateId } from './states.js';

/** Every rule of every clock, in the order in which reasons are listed. */
export const rules: readonly Rule[] = [
  ...batterRules,
  ...setRules,
  ...ashRules,
  ...cureRules,
  ...hotProcessRules,
  ...rebatchRules,
];

/**
 * The rules that act on each state, in the order of `rules`; sorted out once, because benches and simulations ask
 * often.
 */
export const rulesOf: Readonly<Record<StateId, readonly Rule[]>> = byState();

/** Rules about lye that is still at work: what hurries the batter, what brings ash, and gel. */
const ofFreeLye: ReadonlySet<RuleId> = new Set([
  ...[...batterRules, ...ashRules].map(({ id }) => id),
  ...(['gel-on-set', 'gel-on-cure', 'batter-on-set'] as const),
]);

/** As `rulesOf`, for soap whose lye was used up in the pot: once it is in the mould nothing of that tells anything. */
const rulesOnceCooked: Readonly<Record<StateId, readonly Rule[]>> = onceCooked();

/** The rules that act on a state of a batch: those about lye at work only as long as there is any. */
export function rulesFor(state: StateId, { process }: Pick<ClockInputs, 'process'>): readonly Rule[] {
  return (process === 'cold' ? rulesOf : rulesOnceCooked)[state];
}

function onceCooked(): Record<StateId, Rule[]> {
  const found = byState();
  for (const state of stateIds) {
    // Before it is cooked it is batter like any other.
    if (states[state].clock !== 'batter') found[state] = found[state].filter(({ id }) => !ofFreeLye.has(id));
  }
  return found;
}

function byState(): Record<StateId, Rule[]> {
  const found = {} as Record<StateId, Rule[]>;
  for (const state of stateIds) found[state] = rules.filter(({ acts }) => acts.includes(state));
  return found;
}
