import type { LatestStartDocument, PlanDocument, RunOrder, StartReason } from '#contract';
import { instantOf, openIntervals } from '#hours';
import { latestStart, type LatestStart, type Odds } from '#planner';
import { failed, isoInstant, minute, ok, type Minute, type Result } from '#units';
import { unknownName } from '../input/name-issues.js';
import type { PlanOptions, RunsInput } from '../input/input.js';
import type { AssessedRun } from '../assessed-run.js';
import { assessRuns } from '../assess-runs.js';
import { buildNetwork } from './build-network.js';
import { checkCapacity } from './capacity-check.js';
import { describeLoss } from './describe-loss.js';
import { inputOfOne } from './one-run.js';
import { paceChance } from './pace-odds.js';
import { planRuns } from './plan-run.js';
import { reasonsOutOfReach } from './latest-start-reasons.js';
import type { NetworkReferences } from './network-references.js';

export interface LatestStartWish {
  /** Key of the run; absent: the only one. */
  readonly run?: string | undefined;
  /** Local date on whose start the lot must be cured; absent: the day of the order. */
  readonly readyBy?: string | undefined;
  /** Odds to keep, above 0 and below 1. */
  readonly odds: number;
}

/** Two years, in minutes. */
const FURTHEST_DAY = 2 * 365 * 1440;
const DEFAULT_SCENARIOS = 2000;

/**
 * The latest moment at which a run can begin and still be cured by its day with the odds that are wanted, and the plan
 * from there; or the best odds that can be had and what stands in the way.
 *
 * "Begin" is the start of the first hands-on stage. The cure takes whatever hours it likes; only stages are bound to
 * the maker's own. The other runs of the input keep what their plan takes.
 * @returns issues for input that makes no sense: a run or a day that is not told, a run that has begun
 */
export function findLatestStart(
  input: RunsInput,
  wish: LatestStartWish,
  options: PlanOptions,
): Result<LatestStartDocument> {
  const chosen = chooseOrder(input, wish, options.now);
  if (!chosen.ok) return chosen;
  const { order, place } = chosen.value;
  const whole = { ...input, runs: input.runs.map((run, i) => (i === place ? order : run)) };
  // What is wrong with any of it is told where it stands in the whole.
  const checked = assessRuns(whole, { taught: false });
  if (!checked.ok) return checked;
  const one = inputOfOne(whole, order, { ...options, previous: undefined });
  if (!one.ok) return one;
  const taken = assessRuns(one.value);
  if (!taken.ok) return taken;
  const assessedRuns = taken.value.map(({ assessed }) => assessed);
  if (assessedRuns.some(({ progress }) => progress.attempts.some(({ status }) => status !== 'open'))) {
    return failed({ code: 'run.begun', path: ['runs', place], value: order.key, title: order.title });
  }
  return searchFor(one.value, order, { assessedRuns, odds: wish.odds, options });
}

function chooseOrder(
  { runs, workshop }: RunsInput,
  { run, readyBy }: LatestStartWish,
  now: Minute,
): Result<{ readonly order: RunOrder & { readonly readyBy: string }; readonly place: number }> {
  if (run === undefined && runs.length !== 1) {
    const known = runs.map(({ key }) => key);
    return failed({ code: 'run.which', path: ['runs'], value: runs.length, known });
  }
  const place = run === undefined ? 0 : runs.findIndex(({ key }) => key === run);
  const found = runs[place];
  if (found === undefined) return failed(unknownName(['runs'], 'run', run ?? '', runs));
  const day = readyBy ?? found.readyBy;
  const path = ['runs', place, 'readyBy'];
  if (day === undefined) return failed({ code: 'run.no-day', path });
  const due = instantOf(day, workshop.timeZone);
  if (due === undefined) return failed({ code: 'run.no-such-day', path, value: day });
  if (due > now && due <= now + FURTHEST_DAY) {
    return ok({ order: { ...found, readyBy: day }, place });
  }
  return failed({ code: 'run.day-out-of-range', path, value: day, day });
}

interface Search {
  readonly assessedRuns: readonly AssessedRun[];
  readonly odds: number;
  readonly options: PlanOptions;
}

function searchFor(
  input: RunsInput,
  order: RunOrder & { readonly readyBy: string },
  { assessedRuns, odds: wantedOdds, options }: Search,
): Result<LatestStartDocument> {
  const { timeZone, hours } = input.workshop;
  const { now, seed = 1, scenarios = DEFAULT_SCENARIOS } = options;
  const due = instantOf(order.readyBy, timeZone) ?? now;
  const network = buildNetwork(input, assessedRuns, options, openIntervals(hours, timeZone, now, due));
  const { problem, references } = network;
  const base = {
    schema: 'benchtide.latest-start/3' as const,
    madeAt: isoInstant(now),
    timeZone,
    run: order.key,
    readyBy: order.readyBy,
    wantedOdds,
    tooLate: null,
    oddsBound: null,
    lookedFrom: null,
  };
  const planAt = (from: number): Result<PlanDocument> => {
    const made = planRuns(input, { ...options, now: minute(from), previous: undefined });
    return made.ok ? ok({ ...made.value, madeAt: base.madeAt }) : made;
  };
  const none = (status: 'conflict' | 'undecided', why: StartReason): Result<LatestStartDocument> => {
    const plan = planAt(now);
    return plan.ok ? ok({ ...base, status, beginAt: null, odds: null, why: [why], plan: plan.value }) : plan;
  };
  if (checkCapacity(network).length > 0) return none('conflict', { code: 'start.no-plan' });
  const pace = paceChance(assessedRuns);
  const level = Math.min(1, wantedOdds / pace);
  const { stop } = options;
  const answer = latestStart(problem, { level, seed, scenarios, ...(stop && { stop }) });
  if (answer.status === 'not-settled') return none('undecided', { code: 'start.no-time' });
  if (answer.status === 'no-plan') {
    if (answer.outcome.status === 'undecided') return none('undecided', { code: 'start.undecided' });
    return none('conflict', { code: 'start.day-impossible', day: order.readyBy });
  }
  const reached = answer.status === 'found' && wantedOdds <= pace;
  const beginning = answer.status === 'found' ? answer.found : answer.best;
  const plan = planAt(beginning.from);
  if (!plan.ok) return plan;
  const beginAt = isoInstant(minute(beginning.begin));
  const shown = { ...base, beginAt, odds: plan.value.odds, plan: plan.value };
  if (reached) {
    const tooLate = describeTooLate(answer, references, pace);
    const why: StartReason[] = [{ code: 'start.by', at: beginAt }, ...(tooLate?.why ?? [])];
    return ok({ ...shown, status: 'found', tooLate, why });
  }
  const bound = (answer.status === 'found' ? 1 : answer.bound) * pace;
  const lookedFrom = answer.status === 'found' ? null : isoInstant(minute(answer.lookedFrom));
  const why = reasonsOutOfReach({
    plan: plan.value,
    beginAt,
    wantedOdds,
    bound,
    pace,
    open: problem.from,
    lookedFrom,
  });
  return ok({ ...shown, status: 'out-of-reach', oddsBound: bound, lookedFrom, why });
}

function describeTooLate(
  { found, tooLate }: LatestStart & { readonly status: 'found' },
  references: NetworkReferences,
  pace: number,
): LatestStartDocument['tooLate'] {
  if (tooLate === null) return null;
  const at = isoInstant(minute(tooLate.from));
  const probability = (tooLate.odds?.onTime ?? 0) * pace;
  const why: StartReason[] =
    tooLate.odds === null
      ? [{ code: 'start.no-plan-after', at }]
      : [{ code: 'start.odds-fall', at, probability }, ...newlyLost(found.odds, tooLate.odds, references)];
  return { beginAt: at, probability, why };
}

/** What costs that much more than a minute before. */
function newlyLost(before: Odds, after: Odds, references: NetworkReferences): StartReason[] {
  const was = new Map(before.losses.map(({ stage, share }) => [stage, share]));
  const risen = after.losses
    .map((loss) => ({ ...loss, more: loss.share - (was.get(loss.stage) ?? 0) }))
    .sort((a, b) => b.more - a.more)[0];
  return risen === undefined ? [] : [{ code: 'start.costs-more', because: describeLoss(risen, references) }];
}
