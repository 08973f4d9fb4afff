import { sampleDraws } from './draws.js';
import type { Odds, Problem, Schedule } from './problem.js';
import { AS_PLANNED, AT_ALL, ON_TIME, Tally } from './tally.js';

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
/** Differences of odds within so many standard errors of the difference are chance. */
const CHANCE = 2;

/**
 * How much later, in minutes, something may be ready for a hundredth more odds: 6 hours. A run that is lost is made again, which
 * takes the days to the next free ones, a week or so: a hundredth of that is 1 h 40. What it cost in work and materials is lost
 * besides, which we take for two and a half times as much again. Our own judgement. So a day later must be worth four runs in a
 * hundred, and a week nearly thirty. Where a day was asked for, what is ready before it is early enough, and the odds by the
 * day say what lateness costs: there no delay is weighed.
 */
const DELAY_PER_HUNDREDTH = 360;

/** A schedule to choose from. */
export interface Candidate {
  readonly schedule: Schedule;
  /** When it is likely to be ready, in minutes. */
  readonly end: number;
  /** As much of that as there is to wait for: 0 where a day was asked for. */
  readonly waited: number;
}

/**
 * The best schedule by odds, less what waiting for it costs (`DELAY_PER_HUNDREDTH`): first by the odds of being on time; of
 * those that are as good in that to a hundredth, or as far as can be told, by those of missing no requirement at all; of those
 * again, by those of going as planned. So no preference costs what must be. What is as good in all of that goes to the one that is
 * likely to be ready first, so nothing a little surer costs days.
 *
 * All live through the same scenarios, so what tells them apart are those that one
 * comes through and another does not (a paired comparison). After each batch those that trail too far are out; one that
 * fared the same in everything as the leader is out after the second. So the best may be worse than another by a little
 * less than the standard error of its odds.
 * @param options.scenarios those of the best, 1 or more
 * @param options.oddsAlone waiting costs nothing, and what goes as planned a little more often is better: for counting back, where
 *   the start is weighed against the odds by whoever asks
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
    oddsAlone = false,
  }: {
    readonly seed: number;
    readonly scenarios: number;
    readonly stop?: () => boolean;
    readonly oddsAlone?: boolean;
  },
): { readonly schedule: Schedule; readonly odds: Odds } {
  const draws = sampleDraws(p, seed);
  let left = candidates.map((candidate) => ({
    ...candidate,
    ...(oddsAlone && { waited: 0 }),
    tally: new Tally(p, candidate.schedule, draws, scenarios),
  }));
  let leader = left[0]!;
  const endOf = (batch: number): number => Math.ceil((scenarios * batch) / BATCHES);
  for (let batch = 1; batch <= BATCHES; batch++) {
    const isStopped = runBatch(left, endOf(batch), stop);
    leader = best(left, oddsAlone);
    if (batch === BATCHES || isStopped) break;
    left = left.filter(
      (each) =>
        each === leader || isInReach(each.tally, leader.tally, batch > 1, costOf(each) - costOf(leader)),
    );
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

/** What waiting for a schedule costs, as a share of scenarios; only differences mean anything. */
function costOf({ waited }: Candidate): number {
  return (waited / DELAY_PER_HUNDREDTH) * NEXT_TO_NOTHING;
}

type Entered = Candidate & { readonly tally: Tally };

function best<T extends Entered>(left: readonly T[], oddsAlone: boolean): T {
  let good = left;
  for (const least of [ON_TIME, AT_ALL, AS_PLANNED]) {
    const small = oddsAlone && least === AS_PLANNED ? 0 : NEXT_TO_NOTHING;
    good = nextToBest(good, least, { small, chance: oddsAlone ? 0 : CHANCE });
  }
  return good.reduce((a, b) => (b.end < a.end ? b : a));
}

/**
 * Those that are as good as the best in coming out so or better, less what waiting costs: to so small a share, or to what is
 * chance between the two.
 */
function nextToBest<T extends Entered>(
  left: readonly T[],
  least: number,
  { small, chance }: { readonly small: number; readonly chance: number },
): T[] {
  const worth = (each: T): number => each.tally.shareOf(least) - costOf(each);
  const leader = left.reduce((a, b) => (worth(b) > worth(a) ? b : a));
  return left.filter((each) => {
    const { differ } = comparedBy(least, each.tally, leader.tally);
    const byChance = (chance * Math.sqrt(differ)) / each.tally.scenarios;
    return worth(leader) - worth(each) <= Math.max(small, byChance);
  });
}

/** Scenarios lived through so far, and how they came out. */
type Lived = Pick<Tally, 'outcomes' | 'scenarios'>;

/**
 * Whether the odds may still turn out better than the leader's, less what waiting costs.
 * @param knowsTwins true: what fared the same in everything may not
 * @param cost by so much more waiting for it costs than for the leader, as a share of scenarios
 */
export function isInReach(
  tally: Lived,
  leader: Pick<Lived, 'outcomes'>,
  knowsTwins: boolean,
  cost = 0,
): boolean {
  const [onTime, asPlanned] = [ON_TIME, AS_PLANNED].map((least) => comparedBy(least, tally, leader));
  if (onTime!.differ + asPlanned!.differ === 0) return !knowsTwins;
  const behind = cost * tally.scenarios;
  if (trails(onTime!, behind, tally.scenarios)) return false;
  return onTime!.ahead > behind || !trails(asPlanned!, behind, tally.scenarios);
}

interface Compared {
  /** Scenarios that one of the two comes through and the other does not. */
  readonly differ: number;
  /** By how many more it comes through than the leader. */
  readonly ahead: number;
}

/** How a schedule fares beside the leader, where what counts is to come out so or better. */
function comparedBy(least: number, tally: Lived, leader: Pick<Lived, 'outcomes'>): Compared {
  let won = 0;
  let lost = 0;
  for (let k = 0; k < tally.scenarios; k++) {
    const own = tally.outcomes[k]! >= least;
    const other = leader.outcomes[k]! >= least;
    if (own && !other) won++;
    else if (other && !own) lost++;
  }
  return { differ: won + lost, ahead: won - lost };
}

/** @param behind so many scenarios it is behind for what waiting costs; below 0: ahead */
function trails({ differ, ahead }: Compared, behind: number, scenarios: number): boolean {
  // One more of each, so that a few scenarios alone prove nothing; and what is as good to a hundredth does not trail.
  return behind - ahead > Math.max(BEHIND * Math.sqrt(differ + 2), NEXT_TO_NOTHING * scenarios);
}
