import { sampleDraws } from './draws.js';
import { RETEST_MIN } from './odds.js';
import type { Problem, Schedule } from './problem.js';
import { rehearse } from './rehearsal.js';
import { simulator } from './simulate.js';

/**
 * Which scenarios a schedule comes through: 1 for each in which every window was met, as `odds` counts them. Two plans
 * of one seed live through the same weather, so they are compared scenario by scenario, and what luck has in common
 * falls out of the difference.
 * @param options.scenarios 1 or more
 */
export function metScenarios(
  p: Problem,
  s: Schedule,
  options: { readonly seed: number; readonly scenarios: number; readonly retestMin?: number },
): Uint8Array {
  const { seed, scenarios, retestMin = RETEST_MIN } = options;
  const live = simulator(rehearse(p, s), sampleDraws(p, seed, scenarios), retestMin);
  return Uint8Array.from({ length: scenarios }, (_, k) => (live(k) === undefined ? 1 : 0));
}
