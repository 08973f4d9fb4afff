import { band } from '#clocks';
import type { Caution, PartAmounts, PlanDocument, PlannedStage, RunPlan, WeakLink } from '#contract';
import { instantOf, isTimeZone } from '#hours';
import { plan, sittings, type Odds, type Problem, type Schedule } from '#planner';
import { failed, isoInstant, minute, ok, under, type Issue, type Minute, type Result } from '#units';
import { buildNetwork } from './build-network.js';
import { cautionFor } from './cautions.js';
import { checkInput } from './check-input.js';
import { describe, describeConflict, splitId } from './describe-conflict.js';
import { explainStage } from './explain-stage.js';
import { foldLog } from './fold-log.js';
import { handsOnMinutes, type StageAttempt } from './run-progress.js';
import { checkClockInputs, forecastClocks, shownClocks } from './forecast-clocks.js';
import type { PlanOptions, RunsInput } from './input.js';
import { cureStarts, liveAttempts, makingAttempt, READY, stageId, type RunInHand } from './run-in-hand.js';
import { sizeBatches } from './size-batches.js';
import { stageKindFacts } from './stage-kinds.js';
import { stageWindows, type StageWindow } from './stage-windows.js';
import { tooFew } from './too-few.js';
import { warnOfPace } from './warn-of-pace.js';
import { workingsOf, type RunWorkings } from './workings.js';

const DEFAULT_SCENARIOS = 2000;
/** Two years, in minutes. */
const FURTHEST_START = 2 * 365 * 1440;

/**
 * Plans one or several runs together, from recipe to tide table: amounts, clocks, windows, placements, odds and
 * weak links, or the conflict that stands in the way.
 *
 * Pure and reproducible: the same input and options give the same document.
 * @returns the plan document, whose status may be a conflict; issues only for input that makes no sense
 */
export function planRuns(input: RunsInput, options: PlanOptions): Result<PlanDocument> {
  const issues = [...checkInput(input), ...farStarts(input, options.now)];
  if (issues.length > 0) return failed(...(issues as [Issue, ...Issue[]]));
  const runs = workingsOf(input);
  const hands: RunInHand[] = [];
  const amounts: RunPlan['amounts'][] = [];
  for (const [i, run] of runs.entries()) {
    const taken = takeInHand(run, input);
    const sized = sizeBatches(withoutDropped(run, taken.hand), taken.counts);
    issues.push(...taken.issues);
    if (sized.ok) amounts.push(sized.value.map((part) => withPace(part, taken.hand)));
    else issues.push(...under(['runs', i], sized.issues));
    hands.push(taken.hand);
  }
  if (issues.length > 0) return failed(...(issues as [Issue, ...Issue[]]));
  const bare = hands.map((hand, i) => runPlan(hand, amounts[i] ?? [], input.workshop.timeZone, undefined));
  return ok(document(input, options, hands, bare));
}

/** Hours are looked up from now to past the last start, so a start in another century would take as long. */
function farStarts({ runs, workshop }: RunsInput, now: Minute): Issue[] {
  return runs.flatMap((run, i) => {
    const start = isTimeZone(workshop.timeZone) ? instantOf(run.startAfter, workshop.timeZone) : undefined;
    if (start === undefined || start <= now + FURTHEST_START) return [];
    const accepted = 'a start within two years';
    const message = `${run.startAfter} is too far ahead to plan for; accepted: ${accepted}.`;
    const path = ['runs', i, 'startAfter'];
    return [{ code: 'run.start-too-far', path, message, value: run.startAfter, accepted }];
  });
}

function takeInHand(
  run: RunWorkings,
  input: RunsInput,
): { hand: RunInHand; counts: Map<string, number>; issues: Issue[] } {
  const clockIssues = checkClockInputs(run, input);
  const numbered = input.log.map((line, i) => ({ ...line, i })).filter((line) => line.run === run.order.key);
  const folded = foldLog(
    run,
    numbered.map((line) => line.entry),
  );
  const logIssues = folded.issues.map((issue) => {
    const [at = 0, ...rest] = issue.path;
    return { ...issue, path: ['log', numbered[Number(at)]?.i ?? 0, 'entry', ...rest] };
  });
  const clocks = clockIssues.length === 0 ? forecastClocks(run, input.workshop) : new Map<string, never>();
  const hand: RunInHand = { run, progress: folded.progress, clocks };
  const counts = new Map(
    liveAttempts(hand)
      .filter((a) => stageKindFacts[a.stage.kind].makes)
      .map((a) => [a.stage.part, a.count]),
  );
  return { hand, counts, issues: [...clockIssues, ...logIssues] };
}

function document(
  input: RunsInput,
  options: PlanOptions,
  hands: readonly RunInHand[],
  bare: readonly RunPlan[],
): PlanDocument {
  const zone = input.workshop.timeZone;
  const wanted = buildNetwork(input, hands, options);
  const base: PlanDocument = {
    schema: 'benchtide.plan/1',
    madeAt: isoInstant(options.now),
    timeZone: zone,
    status: 'conflict',
    runs: [...bare],
    sittings: [],
    odds: null,
    weakLinks: [],
    conflict: [],
  };
  const scarce = tooFew(wanted, hands);
  if (scarce.length > 0) return { ...base, conflict: scarce };
  const { problem, outcome, odds, missed } = planOrMiss(wanted, hands, {
    seed: options.seed ?? 1,
    scenarios: options.scenarios ?? DEFAULT_SCENARIOS,
  });
  if (outcome.status === 'undecided') return { ...base, status: 'undecided' };
  if (outcome.status === 'conflict') {
    return { ...base, conflict: describeConflict(outcome.requirements, problem, hands, zone) };
  }
  const placed = { windows: stageWindows(problem, outcome.schedule), schedule: outcome.schedule };
  return {
    ...base,
    status: 'planned',
    runs: hands.map((hand, i) => {
      const run = runPlan(hand, bare[i]?.amounts ?? [], zone, placed);
      return missed ? { ...run, cautions: [...run.cautions, ...missedDay(hand)] } : run;
    }),
    sittings: sittingsOf(problem, outcome.schedule),
    odds:
      odds === null
        ? null
        : {
            probability: odds.probability,
            standardError: odds.standardError,
            scenarios: odds.scenarios,
            seed: odds.seed,
          },
    weakLinks: weakLinksOf(odds, problem, hands, zone),
  };
}

/**
 * Plans; where a run that has begun cannot be ready by its day any more, plans it all the same without that day, since
 * soap in the mould has to be seen through.
 */
function planOrMiss(
  problem: Problem,
  hands: readonly RunInHand[],
  options: { readonly seed: number; readonly scenarios: number },
): ReturnType<typeof plan> & { readonly problem: Problem; readonly missed: boolean } {
  const first = plan(problem, options);
  const { outcome } = first;
  const late = outcome.status === 'conflict' && outcome.requirements.some(({ kind }) => kind === 'latest');
  const begun = hands.some(({ progress }) => progress.attempts.some((a) => a.status !== 'open'));
  if (!late || !begun) return { ...first, problem, missed: false };
  const stages = problem.stages.map(({ latest: _day, ...stage }) => stage);
  const open = { ...problem, stages };
  return { ...plan(open, options), problem: open, missed: true };
}

function missedDay({ run }: RunInHand): Caution[] {
  const { readyBy } = run.order;
  if (readyBy === undefined) return [];
  return [
    {
      code: 'missed-day',
      text: `This can hardly be cured by ${readyBy} any more; it is planned without that day.`,
    },
  ];
}

/** A part that is left out and was never made needs no amounts. */
function withoutDropped(run: RunWorkings, hand: RunInHand): RunWorkings {
  const parts = run.design.parts.filter(
    ({ key }) => !hand.progress.dropped.has(key) || makingAttempt(hand, key) !== undefined,
  );
  return { ...run, design: { ...run.design, parts } };
}

function withPace(part: PartAmounts, hand: RunInHand): PartAmounts {
  return { ...part, warnings: [...part.warnings, ...warnOfPace(hand, part.part, part.count)] };
}

interface Placed {
  readonly windows: ReadonlyMap<string, StageWindow>;
  readonly schedule: Schedule;
}

function runPlan(
  hand: RunInHand,
  amounts: RunPlan['amounts'],
  zone: string,
  placed: Placed | undefined,
): RunPlan {
  const { order, design } = hand.run;
  const live = new Set(liveAttempts(hand));
  const stages = hand.progress.attempts
    .filter((attempt) => live.has(attempt) || attempt.status !== 'open')
    .flatMap((attempt) => plannedStage(hand, attempt, zone, placed) ?? []);
  return {
    run: order.key,
    title: order.title,
    design: design.key,
    count: order.count,
    amounts,
    clocks: shownClocks(hand.run, hand.clocks),
    stages: stages.sort((a, b) => a.startAt.localeCompare(b.startAt) || a.key.localeCompare(b.key)),
    ready: placed === undefined ? null : readyBand(hand, placed.schedule),
    cautions: design.looksEdible ? [cautionFor('looks-edible')] : [],
  };
}

function plannedStage(
  hand: RunInHand,
  attempt: StageAttempt,
  zone: string,
  placed: Placed | undefined,
): PlannedStage | undefined {
  const { stage, status, startedAt, endedAt } = attempt;
  const base = {
    key: stage.key,
    attempt: attempt.attempt,
    title: stage.title,
    kind: stage.kind,
    part: stage.part,
    cautions: cautionsOf(attempt),
  };
  if (status !== 'open') {
    if (startedAt === undefined || endedAt === undefined)
      throw new Error(`${stage.key} ended without a time`);
    const at = isoInstant(startedAt);
    return {
      ...base,
      status,
      startAt: at,
      endAt: isoInstant(endedAt),
      opensAt: at,
      bestAt: at,
      lastCallAt: null,
      surelyOpenAt: null,
      surelyUntil: null,
      why: status === 'done' ? 'Done.' : 'Spoilt; made again.',
    };
  }
  const id = stageId(hand.run.order.key, stage.key, attempt.attempt);
  const start = placed?.schedule.starts.get(id);
  const window = placed?.windows.get(id);
  if (start === undefined || window === undefined) return undefined;
  return {
    ...base,
    status: 'planned',
    startAt: isoInstant(minute(start)),
    endAt: isoInstant(minute(start + handsOnMinutes(stage, attempt.count))),
    opensAt: isoInstant(minute(Math.min(window.opens, start))),
    bestAt: isoInstant(minute(start)),
    lastCallAt: instantOrNull(window.lastCall === undefined ? undefined : Math.max(window.lastCall, start)),
    surelyOpenAt: instantOrNull(window.surelyOpen),
    surelyUntil: instantOrNull(window.surelyUntil),
    why: explainStage(hand, attempt, window, zone),
  };
}

function instantOrNull(at: number | undefined): string | null {
  return at === undefined ? null : isoInstant(minute(at));
}

function cautionsOf(attempt: StageAttempt): Caution[] {
  return attempt.status === 'open' ? stageKindFacts[attempt.stage.kind].cautions.map(cautionFor) : [];
}

/** The slowest part decides; its percentiles are taken one by one, as if all parts were slow or fast together. */
function readyBand(hand: RunInHand, schedule: Schedule): RunPlan['ready'] {
  const bands = cureStarts(hand).flatMap(({ part, attempt }) => {
    const start = schedule.starts.get(stageId(hand.run.order.key, attempt.stage.key, attempt.attempt));
    const cured = hand.clocks.get(part)?.get('cured');
    const begun =
      attempt.endedAt ??
      (start === undefined ? undefined : start + handsOnMinutes(attempt.stage, attempt.count));
    if (begun === undefined || cured === undefined) return [];
    const times = band(cured);
    return [{ low: begun + times.low, likely: begun + times.likely, high: begun + times.high }];
  });
  if (bands.length === 0) return null;
  const slowest = (pick: (b: (typeof bands)[number]) => number): string =>
    isoInstant(minute(Math.round(Math.max(...bands.map(pick)))));
  return { low: slowest((b) => b.low), likely: slowest((b) => b.likely), high: slowest((b) => b.high) };
}

function sittingsOf(problem: Problem, schedule: Schedule): PlanDocument['sittings'] {
  const open = problem.stages.filter((s) => s.fixed === undefined);
  return sittings({ ...problem, stages: open }, schedule.starts).map((sitting) => ({
    startAt: isoInstant(minute(sitting.start)),
    endAt: isoInstant(minute(sitting.end)),
    stages: sitting.stages.map((id) => {
      const [run, stage, attempt] = splitId(id);
      return { run, stage, attempt };
    }),
  }));
}

function weakLinksOf(
  odds: Odds | null,
  problem: Problem,
  hands: readonly RunInHand[],
  zone: string,
): WeakLink[] {
  return (odds?.losses ?? []).map((loss) => {
    const [run, stage, attempt] = splitId(loss.stage);
    const why = describe(loss.missed, problem, hands, zone).text;
    return { run, stage: stage === READY ? 'ready' : stage, attempt, share: loss.share, why };
  });
}
