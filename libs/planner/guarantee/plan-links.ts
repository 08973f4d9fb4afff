import { chain } from '../chain.js';
import { stageIndex } from '../compile-problem.js';
import { loadsOf } from '../loads.js';
import type { Lag, Length, Problem, Requirement, Schedule } from '../problem.js';

/** Point 0 of a plan's network, before all else; stage k of the problem starts at point k + 1. */
const ORIGIN = 0;

/** min ≤ t(to) − t(from) ≤ max, and what of the problem asks for it; null: what is done, and what no one can change. */
export interface PlanLink {
  readonly from: number;
  readonly to: number;
  readonly min?: number;
  readonly max?: number;
  readonly tag: Requirement | null;
}

/** One side of a lag whose length only shows when it has come about, counted from `offset` after point `from`. */
export interface Wait {
  readonly from: number;
  readonly offset: number;
  readonly to: number;
  /** Minutes from the start of `to` to what must come in time; 0 for `at-least`. */
  readonly last: number;
  readonly side: 'at-least' | 'at-most';
  readonly length: Length & { readonly kind: 'uncertain' };
  readonly tag: Requirement;
}

/** All that a plan asks, hours aside: what is known to the minute as links, the rest as waits. */
export interface PlanLinks {
  readonly points: number;
  readonly links: readonly PlanLink[];
  readonly waits: readonly Wait[];
}

/**
 * What the problem and the order of its schedule ask of the starts. Stages that are done stand at their minute for
 * good, and what counts from them counts from the origin. The end of a stage is its start and its duration, so it
 * needs no point of its own.
 */
export function planLinks(p: Problem, s: Schedule): PlanLinks {
  const index = stageIndex(p);
  const links = [...p.stages.keys()].flatMap((i) => placeOf(p, i));
  const horizon: Requirement = { kind: 'horizon' };
  p.stages.forEach((stage, i) => {
    if (stage.fixed !== undefined || p.until === Infinity) return;
    links.push({ from: ORIGIN, to: i + 1, max: p.until, tag: horizon });
  });
  const waits: Wait[] = [];
  for (const lag of p.lags) {
    if (isFixed(p, index(lag.from)) && isFixed(p, index(lag.to))) continue;
    for (const side of sidesOf(p, lag, index)) {
      if (side.length.kind === 'uncertain') waits.push({ ...side, length: side.length });
      else links.push(knownLink(side, side.length.minutes));
    }
  }
  const begin = Math.min(p.from, ...p.stages.flatMap(({ fixed }) => fixed ?? []));
  return {
    points: p.stages.length + 1,
    links: [...links, ...orderOf(p, s, index)].map((link) => since(begin, link)),
    waits: waits.map((wait) => (wait.from === ORIGIN ? { ...wait, offset: wait.offset - begin } : wait)),
  };
}

/** A link whose times from the origin were told as minutes. */
function since(begin: number, link: PlanLink): PlanLink {
  const { from, to, min, max, tag } = link;
  if (from !== ORIGIN) return link;
  return {
    ...{ from, to, tag },
    ...(min !== undefined && { min: min - begin }),
    ...(max !== undefined && { max: max - begin }),
  };
}

function knownLink({ from, offset, to, last, side, tag }: Omit<Wait, 'length'>, length: number): PlanLink {
  if (side === 'at-least') return { from, to, min: offset + Math.ceil(length), tag };
  return { from, to, max: offset - last + Math.floor(length), tag };
}

function placeOf(p: Problem, i: number): PlanLink[] {
  const { id, fixed, earliest, latest } = p.stages[i]!;
  const place = { from: ORIGIN, to: i + 1 };
  if (fixed !== undefined) return [{ ...place, min: fixed, max: fixed, tag: null }];
  const places: PlanLink[] = [{ ...place, min: p.from, tag: null }];
  if (earliest !== undefined) places.push({ ...place, min: earliest, tag: { kind: 'earliest', stage: id } });
  if (latest !== undefined) places.push({ ...place, max: latest, tag: { kind: 'latest', stage: id } });
  return places;
}

function sidesOf(
  p: Problem,
  lag: Lag,
  index: (id: string) => number,
): (Omit<Wait, 'length'> & { readonly length: Length })[] {
  const [from, to] = [p.stages[index(lag.from)]!, p.stages[index(lag.to)]!];
  const offset = lag.point === 'end' ? from.duration : 0;
  const ends = {
    from: from.fixed === undefined ? index(lag.from) + 1 : ORIGIN,
    offset: offset + (from.fixed ?? 0),
    to: index(lag.to) + 1,
  };
  return (['at-least', 'at-most'] as const).flatMap((side) => {
    const length = side === 'at-least' ? lag.atLeast : lag.atMost;
    if (length === undefined) return [];
    const last = side === 'at-most' && lag.until === 'end' ? to.duration : 0;
    return [{ ...ends, last, side, length, tag: { kind: `lag-${side}`, lag: lag.id } }];
  });
}

/** The order in which stages hand resources on, to each other and to what the problem does not decide. */
function orderOf(p: Problem, s: Schedule, index: (id: string) => number): PlanLink[] {
  const links = s.precedences.flatMap(({ before, after, resource }): PlanLink[] => {
    const [i, j] = [index(before), index(after)];
    if (isFixed(p, i) && isFixed(p, j)) return [];
    const tag: Requirement = { kind: 'resource', resource, stages: [before, after] };
    return [{ from: i + 1, to: j + 1, min: p.stages[i]!.duration, tag }];
  });
  const busy = p.resources.flatMap((resource) => resource.busy);
  if (busy.length === 0) return links;
  const starts = Float64Array.from([
    ...p.stages.map(({ id, fixed }) => fixed ?? s.starts.get(id)!),
    ...busy.map(({ from }) => from),
  ]);
  const duration = Float64Array.from([
    ...p.stages.map((stage) => stage.duration),
    ...busy.map(({ from, to }) => to - from),
  ]);
  for (const { before, after, resource } of chain(loadsOf(p), starts, duration)) {
    const [i, j] = [before - p.stages.length, after - p.stages.length];
    // Between stages the schedule's own precedences speak.
    if (i < 0 === j < 0) continue;
    const stage = p.stages[Math.min(before, after)]!;
    const tag: Requirement = { kind: 'resource', resource, stages: [stage.id] };
    if (i >= 0) links.push({ from: ORIGIN, to: after + 1, min: busy[i]!.to, tag });
    else links.push({ from: ORIGIN, to: before + 1, max: busy[j]!.from - stage.duration, tag });
  }
  return links;
}

function isFixed(p: Problem, i: number): boolean {
  return p.stages[i]!.fixed !== undefined;
}
