import type { Band } from '#clocks';
import type { Caution, CureDays, PlannedStage, RunPlan } from '#contract';
import type { Schedule } from '#planner';
import { isoInstant, minute } from '#units';
import type { SizedRun } from '../assess-runs.js';
import { bandNow } from '../observed/observe-draws.js';
import { explainStage } from './explain-stage.js';
import { fillingTimes } from '../clocks/filling-time.js';
import { shownClocks } from '../observed/show-clocks.js';
import { cureStarts, liveAttempts, readyId, stageId, type AssessedRun } from '../assessed-run.js';
import { stageMinutes, type StageAttempt } from '../log/run-progress.js';
import { presentGroups } from '../input/present-groups.js';
import { groupsOfStage } from '../input/stage-pieces.js';
import { stageKindFacts } from '../input/stage-kinds.js';
import { stageForecasts } from './stage-forecasts.js';
import type { StageWindow } from './stage-windows.js';

/** Where the planner has put the stages, and when each may start. */
export interface Placed {
  readonly windows: ReadonlyMap<string, StageWindow>;
  readonly schedule: Schedule;
  /** By when a lot is cured in 9 of 10 runs, by planner name, as far as that was simulated. */
  readonly countOn: ReadonlyMap<string, number>;
}

/** What of it the cure goes by. */
type PlacedCure = Pick<Placed, 'schedule' | 'countOn'>;

/**
 * A run as the plan document shows it.
 * @param placed absent: there is no plan, so only what is done has a time
 */
export function presentRun(
  assessed: AssessedRun,
  { amounts, batches }: Pick<SizedRun, 'amounts' | 'batches'>,
  placed: Placed | undefined,
): RunPlan {
  const { order, design } = assessed.run;
  const live = new Set(liveAttempts(assessed));
  const stages = assessed.progress.attempts
    .filter((attempt) => live.has(attempt) || attempt.status !== 'open')
    .flatMap((attempt) => plannedStage(assessed, attempt, placed) ?? []);
  return {
    run: order.key,
    title: order.title,
    design: design.key,
    count: order.count,
    ...presentGroups(assessed.run),
    batches,
    amounts,
    clocks: shownClocks(assessed),
    filling: fillingTimes(assessed),
    ...addedTo(assessed),
    stages: stages.sort((a, b) => a.startAt.localeCompare(b.startAt) || a.key.localeCompare(b.key)),
    ...cureDays(assessed, placed),
    cautions: design.looksEdible ? [{ code: 'caution.looks-edible' }] : [],
  };
}

/** Where a stage is not done for all pieces: for how many, and of which groups. */
function piecesOf(
  { run }: AssessedRun,
  { stage, count }: StageAttempt,
): Pick<PlannedStage, 'pieces' | 'groups'> {
  const groups = groupsOfStage(run.design, stage);
  const isForAll = groups === undefined || groups.length === run.design.groups?.length;
  return {
    ...(count !== run.order.count && { pieces: count }),
    ...(!isForAll && { groups: groups.map(({ key }) => key) }),
  };
}

/** What the design leaves unsaid and the plan keeps: a maker is to know of a wait that they did not write. */
function addedTo({ run }: AssessedRun): Pick<RunPlan, 'added'> {
  const added = [
    ...run.implied.waits.flatMap(({ stage, part, opens, closes }) => [
      ...(opens === undefined ? [] : [{ stage, part, opens }]),
      ...(closes === undefined ? [] : [{ stage, part, closes }]),
    ]),
    ...run.implied.links.map(({ from, to }) => ({ stage: to, after: from })),
  ];
  return added.length === 0 ? {} : { added };
}

function plannedStage(
  assessed: AssessedRun,
  attempt: StageAttempt,
  placed: Placed | undefined,
): PlannedStage | undefined {
  const { stage, status, startedAt, endedAt } = attempt;
  const base = {
    key: stage.key,
    attempt: attempt.attempt,
    title: stage.title,
    kind: stage.kind,
    part: stage.part,
    ...piecesOf(assessed, attempt),
    cautions: cautionsOf(assessed, attempt),
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
      why: [{ code: status === 'done' ? 'why.done' : 'why.spoilt' }],
    };
  }
  const id = stageId(assessed.run.order.key, stage.key, attempt.attempt);
  const start = placed?.schedule.starts.get(id);
  const window = placed?.windows.get(id);
  if (start === undefined || window === undefined) return undefined;
  return {
    ...base,
    status: 'planned',
    startAt: isoInstant(minute(start)),
    endAt: isoInstant(minute(start + stageMinutes(stage, attempt.count))),
    opensAt: isoInstant(minute(Math.min(window.opens, start))),
    bestAt: isoInstant(minute(start)),
    lastCallAt: instantOrNull(window.lastCall === undefined ? undefined : Math.max(window.lastCall, start)),
    surelyOpenAt: instantOrNull(window.surelyOpen),
    surelyUntil: instantOrNull(window.surelyUntil),
    ...forecastsOf(assessed, attempt, placed),
    why: explainStage(assessed, attempt, window),
  };
}

function forecastsOf(
  assessed: AssessedRun,
  { stage }: StageAttempt,
  placed: Placed | undefined,
): Pick<PlannedStage, 'forecasts'> {
  const forecasts = placed === undefined ? [] : stageForecasts(assessed, stage.key, placed.schedule);
  return forecasts.length === 0 ? {} : { forecasts };
}

function instantOrNull(at: number | undefined): string | null {
  return at === undefined ? null : isoInstant(minute(at));
}

function cautionsOf({ run }: AssessedRun, { stage, status }: StageAttempt): Caution[] {
  if (status !== 'open') return [];
  const { cautions } = stageKindFacts[stage.kind];
  const isMelted = run.parts.get(stage.part)?.kind === 'melt-and-pour';
  // Melted base holds no lye, however it is cast.
  const told = isMelted
    ? cautions.map((code) => (code === 'caution.lye' ? 'caution.hot-base' : code))
    : cautions;
  const marked = stage.kind === 'label' && run.design.looksEdible;
  return [...told, ...(marked ? (['caution.looks-edible'] as const) : [])].map((code) => ({ code }));
}

/**
 * From when on the lot may be used, when it is cured, and when it is at its best, each no sooner than the one before.
 * @param placed absent: there is no plan, so it is not known
 */
export function cureDays(assessed: AssessedRun, placed: PlacedCure | undefined): CureDays {
  if (placed === undefined) return { ready: null };
  const [usable, cured, best] = (['usable', 'cured', 'best'] as const).map((state) =>
    slowestPart(assessed, placed, state),
  );
  const { ready: weighed } = assessed.scales;
  if (cured === undefined) return { ready: weighed === undefined ? null : instants(weighed) };
  const countOn = placed.countOn.get(readyId(assessed.run.order.key)) ?? -Infinity;
  const ready = weighed ?? { ...cured, high: Math.max(cured.high, countOn) };
  return {
    ...(usable !== undefined && { usable: instants(eachOf(usable, ready, Math.min)) }),
    ready: instants(ready),
    ...(best !== undefined && { best: instants(eachOf(best, ready, Math.max)) }),
  };
}

/**
 * The slowest part decides; its percentiles are taken one by one, as if all parts were slow or fast together and all went as
 * planned. The high end of the cure is what a maker counts on, so there it is held to the simulation, in which they are not and
 * it may not.
 * @returns undefined where nothing cures
 */
function slowestPart(
  assessed: AssessedRun,
  { schedule }: PlacedCure,
  state: 'usable' | 'cured' | 'best',
): Band | undefined {
  const bands = cureStarts(assessed).flatMap(({ part, attempt }) => {
    const start = schedule.starts.get(stageId(assessed.run.order.key, attempt.stage.key, attempt.attempt));
    const times = bandNow(assessed, part, state);
    const begun =
      attempt.endedAt ??
      (start === undefined ? undefined : start + stageMinutes(attempt.stage, attempt.count));
    if (begun === undefined || times === undefined) return [];
    return [{ low: begun + times.low, likely: begun + times.likely, high: begun + times.high }];
  });
  if (bands.length === 0) return undefined;
  const tested = testedAt(assessed, schedule);
  const slowest = (pick: (b: Band) => number): number => Math.max(...bands.map(pick), ...tested);
  return { low: slowest((b) => b.low), likely: slowest((b) => b.likely), high: slowest((b) => b.high) };
}

function eachOf(a: Band, b: Band, pick: (a: number, b: number) => number): Band {
  return { low: pick(a.low, b.low), likely: pick(a.likely, b.likely), high: pick(a.high, b.high) };
}

/** When the tests are over without which the lot is not ready, as planned or as done. */
function testedAt(assessed: AssessedRun, schedule: Schedule): number[] {
  return liveAttempts(assessed).flatMap(({ stage, attempt, count, endedAt }) => {
    if (stage.kind !== 'zap-test') return [];
    const start = schedule.starts.get(stageId(assessed.run.order.key, stage.key, attempt));
    return endedAt ?? (start === undefined ? [] : start + stageMinutes(stage, count));
  });
}

function instants({ low, likely, high }: Band): NonNullable<RunPlan['ready']> {
  const text = (at: number): string => isoInstant(minute(Math.round(at)));
  return { low: text(low), likely: text(likely), high: text(high) };
}
