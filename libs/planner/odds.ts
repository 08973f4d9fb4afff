import { sampleDraws } from './draws.js';
import type { Odds, Problem, Schedule } from './problem.js';
import { ON_TIME, Tally } from './tally.js';

export interface OddsOptions {
  readonly seed: number;
  /** 1 or more. */
  readonly scenarios: number;
  /** Minutes from one test to the next, 1 or more. */
  readonly retestMin?: number;
}

/**
 * The shares of scenarios in which every stage is done within its lags and hours, by its due date, and as preferred, by
 * simulation of how the work would really go: see `simulator`. Scenarios are common to all plans of a problem for the same
 * seed. The standard error is √(p (1 − p) / scenarios).
 */
export function odds(p: Problem, s: Schedule, options: OddsOptions): Odds {
  return tallyOf(p, s, options).odds(options.seed);
}

/**
 * Which scenarios a schedule comes through on time: 1 for each, as `odds` counts them. Two plans
 * of one seed live through the same weather, so they are compared scenario by scenario, and what luck has in common
 * falls out of the difference.
 */
export function metScenarios(p: Problem, s: Schedule, options: OddsOptions): Uint8Array {
  return tallyOf(p, s, options).outcomes.map((outcome) => (outcome >= ON_TIME ? 1 : 0));
}

function tallyOf(p: Problem, s: Schedule, { seed, scenarios, retestMin }: OddsOptions): Tally {
  return new Tally(p, s, sampleDraws(p, seed), scenarios, retestMin).simulate(scenarios);
}
