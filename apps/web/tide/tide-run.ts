import { makesPart } from '#runs';
import type { Schemas } from '../api/client.js';
import { plainEdge, ribbonEdges, type Beginnings, type RibbonEdge } from './firmness.js';
import type { Stretch } from '../look/local-days.js';

type Plan = Schemas['PlanDocument'];
export type TideStage = Schemas['PlannedStage'];
export type TideClock = Schemas['ClockForecast'];

/** A stage on the chart. */
export interface TideMark {
  /** `KEY#ATTEMPT` */
  readonly id: string;
  /** Its place in the order of the plan, from 1; the tide table has the same. */
  readonly number: number;
  readonly stage: TideStage;
  readonly at: number;
  readonly end: number;
  /** Which ribbon it lies on. */
  readonly row: number;
  /** The share of runs that are lost at it, 0 to 1. */
  readonly lost: number;
}

export interface TidePart {
  readonly key: string;
  readonly title: string;
  readonly edges: readonly RibbonEdge[];
}

/** A run as the tide chart draws it; instants in milliseconds since 1970. */
export interface TideRun {
  readonly groups: Plan['runs'][number]['groups'];
  readonly parts: readonly TidePart[];
  readonly marks: readonly TideMark[];
  readonly sittings: readonly Stretch[];
  readonly ready: { readonly low: number; readonly likely: number; readonly high: number } | null;
  /** All that can be looked at, the cure included. */
  readonly whole: Stretch;
  /** From the first stage to the last, with some water around. */
  readonly making: Stretch;
}

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const frees: ReadonlySet<TideStage['kind']> = new Set(['unmould', 'cut']);

/**
 * What the chart shows of one run of a plan.
 * @param clocks of its parts; more of them make smoother ribbons
 * @returns undefined where no stage has a time: there is nothing to draw
 */
export function tideRun(
  plan: Pick<Plan, 'runs' | 'sittings' | 'weakLinks'>,
  key: string,
  clocks: readonly TideClock[],
  now: number,
): TideRun | undefined {
  const run = plan.runs.find((each) => each.run === key);
  if (run === undefined || run.stages.length === 0) return undefined;
  const rows = rowsOf(run);
  const marks = run.stages.map((stage, i): TideMark => {
    const row = rows.findIndex((part) => part.key === stage.part);
    const times = { at: Date.parse(stage.startAt), end: Date.parse(stage.endAt) };
    // It can be lost in several ways.
    const lost = plan.weakLinks
      .filter((link) => link.run === key && link.stage === stage.key && link.attempt === stage.attempt)
      .reduce((sum, { share }) => sum + share, 0);
    return { id: markId(stage), number: i + 1, stage, ...times, row, lost };
  });
  const first = Math.min(...marks.map(({ at }) => at));
  const last = Math.max(...marks.map(({ end }) => end));
  const ready = readyOf(run);
  const whole = {
    from: Math.min(now, first) - DAY / 2,
    to: Math.max(now, last + 2 * DAY, (ready?.high ?? 0) + 3 * DAY),
  };
  const parts = rows.map(({ key: part, title }): TidePart => {
    const own = clocks.filter((clock) => clock.part === part);
    const begin = beginningsOf(run, marks, part, own);
    if (begin === undefined) return { key: part, title, edges: [] };
    const edges = own.length === 0 ? plainEdge(begin.lyeIn, last) : ribbonEdges(own, begin, whole.to);
    return { key: part, title, edges };
  });
  const sittings = plan.sittings.map(({ startAt, endAt }) => ({
    from: Date.parse(startAt),
    to: Date.parse(endAt),
  }));
  const water = Math.max(2 * HOUR, (last - first) * 0.05);
  const { groups } = run;
  return {
    groups,
    parts,
    marks,
    sittings,
    ready,
    whole,
    making: { from: first - water, to: last + 2 * water },
  };
}

/** What a stage of a plan is called on the page. */
function markId({ key, attempt }: Pick<TideStage, 'key' | 'attempt'>): string {
  return `${key}#${String(attempt)}`;
}

function rowsOf(run: Plan['runs'][number]): { readonly key: string; readonly title: string }[] {
  const told = run.amounts.map(({ part, title }) => ({ key: part, title }));
  const known = new Set(told.map(({ key }) => key));
  // A part that was dropped after it was made has stages and no amounts.
  const others = new Set(run.stages.map(({ part }) => part).filter((part) => !known.has(part)));
  const used = new Set(run.stages.map(({ part }) => part));
  return [...told.filter(({ key }) => used.has(key)), ...[...others].map((key) => ({ key, title: key }))];
}

function readyOf({ ready }: Plan['runs'][number]): TideRun['ready'] {
  if (ready === null) return null;
  return { low: Date.parse(ready.low), likely: Date.parse(ready.likely), high: Date.parse(ready.high) };
}

/** Milliseconds at which the clocks of a part begin. undefined: nothing makes it any more */
function beginningsOf(
  run: Plan['runs'][number],
  marks: readonly TideMark[],
  part: string,
  clocks: readonly TideClock[],
): Beginnings | undefined {
  const makings = marks.filter(({ stage }) => stage.part === part && makesPart(stage.kind));
  const making = makings.findLast(({ stage }) => stage.status !== 'spoilt') ?? makings.at(-1);
  if (making === undefined) return undefined;
  // Parts that share a mould leave it together, at a stage of one of them.
  const freeing = marks.find(({ stage, at }) => frees.has(stage.kind) && at >= making.end);
  return { lyeIn: lyeInOf(run, making, clocks), made: making.end, freed: freeing?.end ?? making.end };
}

/** So long before the end of the making that all pieces can be filled once the batter is thick enough to begin. */
function lyeInOf(run: Plan['runs'][number], making: TideMark, clocks: readonly TideClock[]): number {
  const filling = run.filling.find(({ part }) => part === making.stage.part);
  const start = clocks.find(({ state }) => state === filling?.start);
  if (filling === undefined || start === undefined) return making.at;
  return Math.max(making.at, making.end - (filling.neededMin + start.now.likely) * 60_000);
}
