import type { ResourceReference } from '#contract';
import { instantOf, openIntervals, type OpenInterval } from '#hours';
import type { Hold, Problem, Resource, Share, Stage as PlannerStage, Truncation } from '#planner';
import { minute, minuteOfIso, type Minute } from '#units';
import { stageMinutes, type StageAttempt } from '../log/run-progress.js';
import { restMinutesOf } from '../input/stage-kinds.js';
import { countsFrom } from '../input/counts-from.js';
import type { PlanOptions, RunsInput } from '../input/input.js';
import type { Network } from './network-references.js';
import { lagsOf } from './network-lags.js';
import { sharesOf } from './shares-of.js';
import { streamsOf } from './streams-of.js';
import type { NetworkStage } from './network-references.js';
import { BENCH, cureStarts, liveAttempts, readyId, stageId, type AssessedRun } from '../assessed-run.js';
import { builtOn } from '../log/respond-to-mishap.js';
import { piecesOfStage } from '../input/stage-pieces.js';
import { cavitiesFor, cavitiesOf, mouldUse, type ResolvedRun } from '../input/resolve-run.js';

/** How far ahead hours are looked up, in days: a making that cannot be placed in a season is no plan. */
const MAKING_WITHIN_DAYS = 120;
/** How far ahead the lot may become ready, in days: the slowest soap cures for a year. */
const READY_WITHIN_DAYS = 540;

/**
 * Turns runs, their clocks and where they stand into the planner's question: stages with lags between them,
 * hands, moulds and equipment as resources, the maker's hours as the calendar; and tells what its names stand for.
 * @param open those hours, where they were looked up before
 */
export function buildNetwork(
  input: RunsInput,
  runs: readonly AssessedRun[],
  options: PlanOptions,
  open?: readonly OpenInterval[],
): Network {
  const { timeZone, hours } = input.workshop;
  const starts = runs.map(({ run }) => startAfter(run, timeZone));
  const from = minute(Math.min(options.now, ...starts, ...runs.flatMap(earliestDone)));
  const previous = previousStarts(options);
  const hoursAheadDays = daysAhead(runs);
  const hoursUntil = minute(Math.max(options.now, ...starts) + hoursAheadDays * 1440);
  const stages = runs.map((r) => stagesOf(r, timeZone, options.now, previous));
  const lags = runs.flatMap(lagsOf);
  const resources = resourcesOf(input);
  const problem: Problem = {
    stages: stages.flat(),
    lags: lags.map(({ lag }) => lag),
    holds: runs.flatMap(holdsOf),
    deliveries: stages.map((ofRun) => ofRun.map(({ id }) => id)).filter((ids) => ids.length > 0),
    resources: resources.map(({ resource }) => resource),
    calendars: { [BENCH]: open ?? openIntervals(hours, timeZone, options.now, hoursUntil) },
    draws: Object.assign({}, ...runs.map(({ draws }) => draws)) as Record<string, Truncation>,
    shares: Object.assign({}, ...runs.map(sharesOf)) as Record<string, Share[]>,
    streams: streamsOf(runs),
    from,
    until: hoursUntil + READY_WITHIN_DAYS * 1440,
  };
  const references = {
    stages: new Map(runs.flatMap(stageReferences)),
    // Of lags that bridge the same gap the planner's first is meant.
    lags: new Map(lags.map(({ lag, reference }) => [lag.id, reference] as const).reverse()),
    resources: new Map(resources.map(({ resource, reference }) => [resource.id, reference])),
    hoursAheadDays,
  };
  return { problem, references };
}

/** How far ahead hours are looked up, in days: until the slowest soap is cured where a stage waits for that. */
function daysAhead(runs: readonly AssessedRun[]): number {
  const waitsForCure = runs.some(({ run }) =>
    run.design.waits.some(({ opens }) => opens !== undefined && countsFrom(opens) === 'unmoulding'),
  );
  return waitsForCure ? READY_WITHIN_DAYS : MAKING_WITHIN_DAYS;
}

function stageReferences(assessed: AssessedRun): [string, NetworkStage][] {
  const { key: run, title } = assessed.run.order;
  const lot: NetworkStage = { assessed, run, stage: null, attempt: 1, title };
  return [
    ...liveAttempts(assessed).map(({ stage, attempt }): [string, NetworkStage] => [
      stageId(run, stage.key, attempt),
      { assessed, run, stage: stage.key, attempt, title: stage.title },
    ]),
    [readyId(run), lot],
  ];
}

function startAfter(run: ResolvedRun, zone: string): Minute {
  const at = instantOf(run.order.startAfter, zone);
  if (at === undefined) throw new Error(`start ${run.order.startAfter} was not checked`);
  return at;
}

function earliestDone({ progress }: AssessedRun): Minute[] {
  return progress.attempts.flatMap((a) =>
    a.status === 'done' && a.startedAt !== undefined ? [a.startedAt] : [],
  );
}

function stagesOf(
  assessed: AssessedRun,
  zone: string,
  now: Minute,
  previous: ReadonlyMap<string, number>,
): PlannerStage[] {
  const key = assessed.run.order.key;
  const begin = Math.max(now, startAfter(assessed.run, zone));
  const stages = liveAttempts(assessed).map((attempt): PlannerStage => {
    const id = stageId(key, attempt.stage.key, attempt.attempt);
    if (attempt.status === 'done' && attempt.startedAt !== undefined && attempt.endedAt !== undefined) {
      return { id, duration: attempt.endedAt - attempt.startedAt, uses: [], fixed: attempt.startedAt };
    }
    const before = previous.get(id);
    const since = Math.max(begin, attempt.notBefore ?? begin);
    const again = before === undefined ? {} : { previous: before };
    // What rests needs neither hands nor hours.
    if (restMinutesOf(attempt.stage) !== undefined) {
      const duration = stageMinutes(attempt.stage, attempt.count);
      return { id, duration, uses: [], earliest: since, ...again };
    }
    return {
      id,
      duration: stageMinutes(attempt.stage, attempt.count),
      uses: [
        { resource: 'hands', amount: 1 },
        ...attempt.stage.needs.map((need) => ({
          resource: `equipment:${need.equipment}`,
          amount: need.count,
        })),
      ],
      calendar: BENCH,
      earliest: since,
      ...again,
    };
  });
  const ready: PlannerStage = { id: readyId(key), duration: 0, uses: [], ...readyBy(assessed, zone) };
  return cureStarts(assessed).length === 0 ? stages : [...stages, ready];
}

function readyBy({ run }: AssessedRun, zone: string): { readonly latest?: number; readonly isDue?: true } {
  const due = run.order.readyBy === undefined ? undefined : instantOf(run.order.readyBy, zone);
  return due === undefined ? {} : { latest: due, isDue: true };
}

function previousStarts(options: PlanOptions): Map<string, number> {
  const starts = new Map<string, number>();
  for (const run of options.previous?.runs ?? []) {
    for (const stage of run.stages) {
      if (stage.status !== 'planned') continue;
      starts.set(stageId(run.run, stage.key, stage.attempt), minuteOfIso(stage.startAt));
    }
  }
  return starts;
}

function holdsOf(assessed: AssessedRun): Hold[] {
  const { run } = assessed;
  const key = run.order.key;
  const live = liveAttempts(assessed);
  return [...run.moulds.values()].flatMap((mould): Hold[] => {
    const use = mouldUse(run.design, mould.key, assessed.progress.dropped);
    if (use === undefined) return [];
    const later = new Set(
      [...use.makes].flatMap((made) => [...builtOn(run, made)].filter((each) => each !== made)),
    );
    const from = live.find((a) => use.makes.has(a.stage.key) && !later.has(a.stage.key));
    const to = live.find((a) => a.stage.key === use.frees);
    if (from === undefined || to === undefined || to.status === 'done') return [];
    const isForAll = to.count === piecesOfStage(run, to.stage);
    const amount = isForAll ? cavitiesOf(run, use) : cavitiesFor(use, to.count);
    const id = (a: StageAttempt): string => stageId(key, a.stage.key, a.attempt);
    return [
      { id: `${key}/mould/${mould.key}`, resource: `mould:${mould.key}`, amount, from: id(from), to: id(to) },
    ];
  });
}

function resourcesOf(input: RunsInput): { resource: Resource; reference: ResourceReference }[] {
  const { hands, equipment } = input.workshop;
  const named = (kind: 'mould' | 'equipment', key: string, title: string) => ({ kind, key, title });
  const capacities: [string, number, ResourceReference][] = [
    ['hands', hands, { kind: 'hands' }],
    ...input.moulds.map(({ key, title, cavities }): [string, number, ResourceReference] => [
      `mould:${key}`,
      cavities,
      named('mould', key, title),
    ]),
    ...equipment.map(({ key, title, count }): [string, number, ResourceReference] => [
      `equipment:${key}`,
      count,
      named('equipment', key, title),
    ]),
  ];
  return capacities.map(([id, capacity, reference]) => {
    const taken = (input.busy ?? []).filter(({ resource }) => resource === id);
    const busy = taken.map(({ from, to, amount }) => ({ from, to, amount }));
    return { resource: { id, capacity, busy }, reference };
  });
}
