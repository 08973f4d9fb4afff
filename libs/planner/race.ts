import { sampleDraws } from './draws.js';
import type { Odds, Problem, Schedule } from './problem.js';
import { Tally } from './tally.js';

/** Into how many heats the scenarios are cut. */
const HEATS = 8;
/** A schedule is out when it trails the leader by more than so many standard errors of the difference. */
const BEHIND = 3;
/** Scenarios between two questions whether to stop, where a heat has as many. */
const HEARD = 25;
/** So many the winner of a race that was stopped is to live through, where the first heat has as many. */
const LEAST = 100;

/** A schedule in the race; of equal odds the earlier in total wins. */
export interface Runner {
  readonly schedule: Schedule;
  readonly total: number;
}

/**
 * The schedule with the best odds. All live through the same scenarios, so what tells them apart are those that one
 * comes through and another does not (a paired comparison). After each heat those that trail too far are out; one that
 * fared the same in everything as the leader is out after the second. So the winner may be worse than another by a little
 * less than the standard error of its odds.
 * @param options.scenarios those of the winner, 1 or more
 * @param options.stop once it says true, the leader is the winner, with the scenarios simulated so far; with 100, or one
 *   heat of them, if there were fewer
 */
export function race(
  p: Problem,
  runners: readonly Runner[],
  {
    seed,
    scenarios,
    stop = () => false,
  }: { readonly seed: number; readonly scenarios: number; readonly stop?: () => boolean },
): { readonly schedule: Schedule; readonly odds: Odds } {
  const draws = sampleDraws(p, seed);
  let left = runners.map((runner) => ({ ...runner, tally: new Tally(p, runner.schedule, draws, scenarios) }));
  let leader = left[0]!;
  const endOf = (heat: number): number => Math.ceil((scenarios * heat) / HEATS);
  for (let heat = 1; heat <= HEATS; heat++) {
    const isStopped = runHeat(left, endOf(heat), stop);
    leader = left.reduce((a, b) => (isBetter(b, a) ? b : a));
    if (heat === HEATS || isStopped) break;
    left = left.filter((each) => each === leader || isInReach(each.tally, leader.tally, heat > 1));
  }
  leader.tally.simulate(Math.min(LEAST, endOf(1)));
  return { schedule: leader.schedule, odds: leader.tally.odds(seed) };
}

/** All live through the scenarios up to the end of the heat together. @returns whether it was stopped, maybe before that */
function runHeat(left: readonly { readonly tally: Tally }[], end: number, stop: () => boolean): boolean {
  for (let next = left[0]!.tally.scenarios; next < end;) {
    next = Math.min(next + HEARD, end);
    for (const { tally } of left) tally.simulate(next);
    if (stop()) return true;
  }
  return false;
}

function isBetter(a: Runner & { tally: Tally }, b: Runner & { tally: Tally }): boolean {
  const more = a.tally.probability - b.tally.probability;
  return more > 0 || (more === 0 && a.total < b.total);
}

/** Whether the odds may still turn out better than the leader's. */
function isInReach(tally: Tally, leader: Tally, knowsTwins: boolean): boolean {
  let won = 0;
  let lost = 0;
  for (let k = 0; k < tally.scenarios; k++) {
    if (tally.met[k]! > leader.met[k]!) won++;
    else if (tally.met[k]! < leader.met[k]!) lost++;
  }
  if (won + lost === 0) return !knowsTwins;
  // One more of each, so that a few scenarios alone prove nothing.
  return lost - won <= BEHIND * Math.sqrt(won + lost + 2);
}
