import type { Rule } from './rule.js';
import { ashRules } from './rules/ash.js';
import { batterRules } from './rules/batter.js';
import { cureRules } from './rules/cure.js';
import { setRules } from './rules/set.js';
import { stateIds, type StateId } from './states.js';

/** Every rule of every clock, in the order in which reasons are listed. */
export const rules: readonly Rule[] = [...batterRules, ...setRules, ...ashRules, ...cureRules];

/**
 * The rules that act on each state, in the order of `rules`; sorted out once, because benches and simulations ask
 * often.
 */
export const rulesOf: Readonly<Record<StateId, readonly Rule[]>> = byState();

function byState(): Record<StateId, Rule[]> {
  const found = {} as Record<StateId, Rule[]>;
  for (const state of stateIds) found[state] = rules.filter(({ acts }) => acts.includes(state));
  return found;
}
