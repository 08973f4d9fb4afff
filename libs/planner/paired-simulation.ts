import { sampleDraws } from './draws.js';
import type { Odds, Problem, Schedule } from './problem.js';
import { AS_PLANNED, ON_TIME, Tally } from './tally.js';

/** Into how many batches the scenarios are cut. */
const BATCHES = 8;
/** A schedule is out when it trails the leader by more than so many standard errors of the difference, and by a hundredth. */
const BEHIND = 3;
/** Scenarios between two questions whether to stop, where a batch has as many. */
const HEARD = 25;
/** So many the best is to be simulated in where it was stopped early, where the first batch has as many. */
const LEAST = 100;

/** A share of scenarios too small to choose by, where there is something else to choose by. */
const NEXT_TO_NOTHING = 0.01;

/** A schedule to choose from; of equal odds the earlier in total wins. */
export interface Candidate {
  readonly schedule: Schedule;
  readonly total: number;
}

/**
 * The schedule with the best odds: first of being on time; of those that are as good in that to a hundredth, of missing no
 * requirement at all; of those again, of going as planned. So no preference costs what must be.
 *
 * All live through the same scenarios, so what tells them apart are those that one
 * comes through and another does not (a paired comparison). After each batch those that trail too far are out; one that
 * fared the same in everything as the leader is out after the second. So the best may be worse than another by a little
 * less than the standard error of its odds.
 * @param options.scenarios those of the best, 1 or more
 * @param options.stop once it says true, the leader is the answer, with the scenarios simulated so far; with 100, or one
 *   batch of them, if there were fewer
 */
export function selectByPairedSimulation(
  p: Problem,
  candidates: readonly Candidate[],
  {
    seed,
    scenarios,
    stop = () => false,
  }: { readonly seed: number; readonly scenarios: number; readonly stop?: () => boolean },
): { readonly schedule: Schedule; readonly odds: Odds } {
  const draws = sampleDraws(p, seed);
  let left = candidates.map((candidate) => ({
    ...candidate,
    tally: new Tally(p, candidate.schedule, draws, scenarios),
  }));
  let leader = left[0]!;
  const endOf = (batch: number): number => Math.ceil((scenarios * batch) / BATCHES);
  for (let batch = 1; batch <= BATCHES; batch++) {
    const isStopped = runBatch(left, endOf(batch), stop);
    leader = best(left);
    if (batch === BATCHES || isStopped) break;
    left = left.filter((each) => each === leader || isInReach(each.tally, leader.tally, batch > 1));
  }
  leader.tally.simulate(Math.min(LEAST, endOf(1)));
  return { schedule: leader.schedule, odds: leader.tally.odds(seed) };
}

/** All live through the scenarios up to the end of the batch together. @returns whether it was stopped, maybe before that */
function runBatch(left: readonly { readonly tally: Tally }[], end: number, stop: () => boolean): boolean {
  for (let next = left[0]!.tally.scenarios; next < end;) {
    next = Math.min(next + HEARD, end);
    for (const { tally } of left) tally.simulate(next);
    if (stop()) return true;
  }
  return false;
}

function best<T extends Candidate & { readonly tally: Tally }>(left: readonly T[]): T {
  const good = nextToBest(
    nextToBest(left, ({ onTime }) => onTime),
    ({ atAll }) => atAll,
  );
  return good.reduce((a, b) => {
    const more = b.tally.asPlanned - a.tally.asPlanned;
    return more > 0 || (more === 0 && b.total < a.total) ? b : a;
  });
}

function nextToBest<T extends { readonly tally: Tally }>(
  left: readonly T[],
  figure: (tally: Tally) => number,
): T[] {
  const most = Math.max(...left.map(({ tally }) => figure(tally)));
  return left.filter(({ tally }) => figure(tally) >= most - NEXT_TO_NOTHING);
}

/** Scenarios lived through so far, and how they came out. */
type Lived = Pick<Tally, 'outcomes' | 'scenarios'>;

/**
 * Whether the odds may still turn out better than the leader's.
 * @param knowsTwins true: what fared the same in everything may not
 */
export function isInReach(tally: Lived, leader: Pick<Lived, 'outcomes'>, knowsTwins: boolean): boolean {
  const [onTime, asPlanned] = [ON_TIME, AS_PLANNED].map((least) => comparedBy(least, tally, leader));
  if (onTime!.differ + asPlanned!.differ === 0) return !knowsTwins;
  if (onTime!.trails) return false;
  return onTime!.ahead > 0 || !asPlanned!.trails;
}

/** How a schedule fares beside the leader, where what counts is to come out so or better. */
function comparedBy(
  least: number,
  tally: Lived,
  leader: Pick<Lived, 'outcomes'>,
): { readonly differ: number; readonly ahead: number; readonly trails: boolean } {
  let won = 0;
  let lost = 0;
  for (let k = 0; k < tally.scenarios; k++) {
    const own = tally.outcomes[k]! >= least;
    const other = leader.outcomes[k]! >= least;
    if (own && !other) won++;
    else if (other && !own) lost++;
  }
  // One more of each, so that a few scenarios alone prove nothing; and what is as good to a hundredth does not trail.
  const enough = Math.max(BEHIND * Math.sqrt(won + lost + 2), NEXT_TO_NOTHING * tally.scenarios);
  const trails = lost - won > enough;
  return { differ: won + lost, ahead: won - lost, trails };
}
