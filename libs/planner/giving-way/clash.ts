import { lengthAt } from '../length.js';
import type { Certainty, Interval, Lag, Problem, Requirement, Stage } from '../problem.js';
import { restrict } from '../requirements.js';
import { windows } from '../windows.js';

/** The instants at which a conflict shows, from what all its requirements but one leave open. */
export type Clash = {
  /** The stage that comes last before, and the minute it is taken to start at: as early as it can. */
  readonly given: { readonly stage: string; readonly start: number } | undefined;
} & (
  | {
      /** A stage that may start from `earliest` to `latest` (Infinity: nothing closes that), when its hours have no room. */
      readonly kind: 'hours';
      readonly stage: string;
      readonly earliest: number;
      readonly latest: number;
      readonly closed: { readonly from: number | undefined; readonly to: number | undefined };
    }
  | {
      /** A stage that cannot start before `earliest` and must by `due`. */
      readonly kind: 'too-late';
      readonly stage: string;
      readonly earliest: number;
      readonly due: number;
      readonly by: 'latest' | 'lag-at-most';
    }
  | {
      /** A stage that must start by `latest` and may not before `opens`. */
      readonly kind: 'too-early';
      readonly stage: string;
      readonly latest: number;
      readonly opens: number;
    }
  | {
      /** Stages that need the same thing, and when each may start. */
      readonly kind: 'shared';
      readonly resource: string;
      readonly stages: readonly {
        readonly stage: string;
        readonly earliest: number;
        readonly latest: number;
      }[];
    }
);

/**
 * Where a minimal conflict shows on the clock. One requirement is left out, and what the others allow is held against
 * it: a day to be kept; else the hours of the stage that comes last; else a resource; else how long a lag may be; else
 * how early a stage may start. What comes before is taken to be done as early as it can be.
 * @param requirements a minimal conflict of `p` at that certainty
 * @returns undefined where none of its requirements is of these kinds
 */
export function clashOf(
  p: Problem,
  requirements: readonly Requirement[],
  certainty: Certainty,
): Clash | undefined {
  for (const kind of ['latest', 'calendar', 'resource', 'lag-at-most', 'earliest'] as const) {
    const clashes = requirements.flatMap((left) => {
      if (left.kind !== kind) return [];
      const rest = restrict(
        p,
        requirements.filter((each) => each !== left),
      );
      const clash = against(p, rest, left, certainty);
      return clash === undefined ? [] : [clash];
    });
    const last = clashes.sort((a, b) => (b.given?.start ?? -Infinity) - (a.given?.start ?? -Infinity))[0];
    if (last !== undefined) return last;
  }
  return undefined;
}

function against(p: Problem, rest: Problem, left: Requirement, certainty: Certainty): Clash | undefined {
  const free = windows(rest, certainty);
  if (free.status === 'conflict') return undefined;
  const earliest = (id: string): number => free.windows.get(id)!.earliest;
  if (left.kind === 'resource') {
    const stages = left.stages.map((stage) => ({ stage, ...bounds(free.windows.get(stage)!) }));
    return { kind: 'shared', resource: left.resource, stages, given: undefined };
  }
  if (left.kind === 'lag-at-most') {
    const lag = p.lags.find(({ id }) => id === left.lag)!;
    const due = dueOf(p, lag, earliest(lag.from), certainty);
    const given = { stage: lag.from, start: earliest(lag.from) };
    return { kind: 'too-late', stage: lag.to, earliest: earliest(lag.to), due, by: 'lag-at-most', given };
  }
  if (left.kind !== 'latest' && left.kind !== 'calendar' && left.kind !== 'earliest') return undefined;
  const stage = p.stages.find(({ id }) => id === left.stage)!;
  const before = involved(rest, stage.id).filter((id) => earliest(id) < earliest(stage.id));
  const last = before.sort((a, b) => earliest(b) - earliest(a))[0];
  const given = last === undefined ? undefined : { stage: last, start: earliest(last) };
  if (left.kind === 'latest') {
    const [from, due] = [earliest(stage.id), stage.latest ?? p.until];
    return { kind: 'too-late', stage: stage.id, earliest: from, due, by: 'latest', given };
  }
  if (left.kind === 'earliest') {
    const latest = free.windows.get(stage.id)!.latest;
    return { kind: 'too-early', stage: stage.id, latest, opens: stage.earliest ?? p.from, given: undefined };
  }
  const set = new Set(before);
  const stages = rest.stages.map((each) => (set.has(each.id) ? { ...each, fixed: earliest(each.id) } : each));
  const then = windows({ ...rest, stages }, certainty);
  if (then.status === 'conflict') return undefined;
  const found = bounds(then.windows.get(stage.id)!);
  return { kind: 'hours', stage: stage.id, ...found, closed: closedAround(p, stage, found), given };
}

function bounds({ earliest, latest }: { readonly earliest: number; readonly latest: number }) {
  return { earliest, latest };
}

/** The latest start that an upper lag allows once its first stage is where it is. */
function dueOf(p: Problem, lag: Lag, start: number, certainty: Certainty): number {
  const duration = (id: string): number => p.stages.find((stage) => stage.id === id)?.duration ?? 0;
  const point = start + (lag.point === 'end' ? duration(lag.from) : 0);
  const most = lag.atMost === undefined ? Infinity : lengthAt(lag.atMost, certainty, 'at-most', p.draws);
  return point + most - (lag.until === 'end' ? duration(lag.to) : 0);
}

/** Stages that hang together with one by the lags that are left. */
function involved(rest: Problem, stage: string): string[] {
  const found = new Set([stage]);
  for (let size = 0; size < found.size;) {
    size = found.size;
    for (const { from, to, atLeast, atMost } of rest.lags) {
      if (atLeast === undefined && atMost === undefined) continue;
      if (found.has(from)) found.add(to);
      if (found.has(to)) found.add(from);
    }
  }
  found.delete(stage);
  return [...found];
}

/** When the hours before the window end, and when those after it begin. */
function closedAround(
  p: Problem,
  { calendar, duration }: Stage,
  { earliest, latest }: { readonly earliest: number; readonly latest: number },
): { from: number | undefined; to: number | undefined } {
  const open: readonly Interval[] = p.calendars[calendar ?? ''] ?? [];
  return {
    from: open.filter(({ to }) => to - duration < earliest).at(-1)?.to,
    to: open.find(({ from }) => from > latest)?.from,
  };
}
