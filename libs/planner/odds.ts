import { sampleDraws, type Draws } from './draws.js';
import type { Odds, Problem, Requirement, Schedule } from './problem.js';
import { rehearse } from './rehearsal.js';
import { simulator } from './simulate.js';

/** Minutes until something that was not firm is touched again. Common practice, no source. */
export const RETEST_MIN = 30;

/**
 * The share of scenarios in which every stage is done within its lags and hours, by simulation of how the work
 * would really go: see `simulator`. Scenarios are common to all plans of a problem for the same seed.
 * @param options.scenarios 1 or more; the standard error is √(p (1 − p) / scenarios)
 * @param options.retestMin minutes from one test to the next, 1 or more
 */
export function odds(
  p: Problem,
  s: Schedule,
  options: { readonly seed: number; readonly scenarios: number; readonly retestMin?: number },
): Odds {
  return oddsOver(sampleDraws(p, options.seed, options.scenarios), p, s, options);
}

/** The same for draws already sampled, with the same seed and number of scenarios. */
export function oddsOver(
  draws: Draws,
  p: Problem,
  s: Schedule,
  options: { readonly seed: number; readonly scenarios: number; readonly retestMin?: number },
): Odds {
  const { seed, scenarios, retestMin = RETEST_MIN } = options;
  const live = simulator(rehearse(p, s), draws, retestMin);
  const lost = new Map<number, Map<Requirement, number>>();
  let met = 0;
  for (let k = 0; k < scenarios; k++) {
    const loss = live(k);
    if (loss === undefined) {
      met++;
      continue;
    }
    let reasons = lost.get(loss.stage);
    if (reasons === undefined) lost.set(loss.stage, (reasons = new Map()));
    reasons.set(loss.missed, (reasons.get(loss.missed) ?? 0) + 1);
  }
  const probability = met / scenarios;
  const losses = [...lost].map(([stage, reasons]) => {
    const count = [...reasons.values()].reduce((sum, each) => sum + each, 0);
    return { stage: p.stages[stage]!.id, share: count / scenarios, missed: mostMissed(reasons) };
  });
  return {
    probability,
    standardError: Math.sqrt((probability * (1 - probability)) / scenarios),
    scenarios,
    seed,
    losses: losses.sort((a, b) => b.share - a.share),
  };
}

/** The requirement missed most often; one that came in several copies counts as one. */
function mostMissed(reasons: ReadonlyMap<Requirement, number>): Requirement {
  const byText = new Map<string, { missed: Requirement; count: number }>();
  for (const [missed, count] of reasons) {
    const key = JSON.stringify(missed);
    byText.set(key, { missed, count: count + (byText.get(key)?.count ?? 0) });
  }
  return [...byText.values()].reduce((a, b) => (b.count > a.count ? b : a)).missed;
}
