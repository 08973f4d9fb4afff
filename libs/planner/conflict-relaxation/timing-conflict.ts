import { lengthAt } from '../length.js';
import type { Certainty, Interval, Lag, Problem, Requirement, Stage } from '../problem.js';
import { restrict } from '../requirements.js';
import { windows } from '../windows.js';
import { without } from './relaxed-problem.js';

/** The instants at which a conflict shows, from what all its requirements but one leave open. */
export type TimingConflict = {
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
export function timingConflictOf(
  p: Problem,
  requirements: readonly Requirement[],
  certainty: Certainty,
): TimingConflict | undefined {
  for (const kind of ['latest', 'calendar', 'resource', 'lag-at-most', 'earliest'] as const) {
    const conflicts = requirements.flatMap((left) => {
      if (left.kind !== kind) return [];
      const others = requirements.filter((each) => each !== left);
      // With all that is asked, the instants are those of the plan; where more is wrong, those of this conflict alone.
      const conflict =
        against(p, without(p, left), left, { others, certainty }) ??
        against(p, restrict(p, others), left, { others, certainty });
      return conflict === undefined ? [] : [conflict];
    });
    const last = conflicts.sort((a, b) => (b.given?.start ?? -Infinity) - (a.given?.start ?? -Infinity))[0];
    if (last !== undefined) return last;
  }
  return undefined;
}

function against(
  p: Problem,
  rest: Problem,
  left: Requirement,
  { others, certainty }: { readonly others: readonly Requirement[]; readonly certainty: Certainty },
): TimingConflict | undefined {
  const free = windows(rest, certainty);
  if (free.status === 'conflict') return undefined;
  const earliest = (id: string): number => free.windows.get(id)!.earliest;
  if (left.kind === 'resource') {
    const stages = left.stages.map((id) => ({
      stage: id,
      ...bounds(p, stageOf(p, id), free.windows.get(id)!),
    }));
    return { kind: 'shared', resource: left.resource, stages, given: undefined };
  }
  if (left.kind === 'lag-at-most') {
    const lag = p.lags.find(({ id }) => id === left.lag)!;
    const due = dueOf(p, lag, earliest(lag.from), certainty);
    const given = { stage: lag.from, start: earliest(lag.from) };
    return { kind: 'too-late', stage: lag.to, earliest: earliest(lag.to), due, by: 'lag-at-most', given };
  }
  if (left.kind !== 'latest' && left.kind !== 'calendar' && left.kind !== 'earliest') return undefined;
  const stage = stageOf(p, left.stage);
  if (left.kind === 'earliest') {
    const latest = free.windows.get(stage.id)!.latest;
    return { kind: 'too-early', stage: stage.id, latest, opens: stage.earliest ?? p.from, given: undefined };
  }
  const before = p.stages.map(({ id }) => id).filter((id) => earliest(id) < earliest(stage.id));
  const given = lastOf(before, stage.id, { p, others, earliest });
  if (left.kind === 'latest') {
    const [from, due] = [earliest(stage.id), stage.latest ?? p.until];
    return { kind: 'too-late', stage: stage.id, earliest: from, due, by: 'latest', given };
  }
  const done = new Set(before);
  const stages = rest.stages.map((each) =>
    done.has(each.id) ? { ...each, fixed: earliest(each.id) } : each,
  );
  const then = windows({ ...rest, stages }, certainty);
  if (then.status === 'conflict') return undefined;
  const found = bounds(p, stage, then.windows.get(stage.id)!);
  return { kind: 'hours', stage: stage.id, ...found, closed: closedAround(p, stage, found), given };
}

function stageOf(p: Problem, id: string): Stage {
  return p.stages.find((stage) => stage.id === id)!;
}

/** A window, with no end where only the end of the hours that were looked up closes it. */
function bounds(
  p: Problem,
  { calendar, duration }: Stage,
  { earliest, latest }: { readonly earliest: number; readonly latest: number },
): { readonly earliest: number; readonly latest: number } {
  const end = p.calendars[calendar ?? '']?.at(-1)?.to ?? p.until;
  return { earliest, latest: latest + duration >= end ? Infinity : latest };
}

/** Of the stages before, the last that a lag of the conflict ties to this one. */
function lastOf(
  before: readonly string[],
  stage: string,
  of: {
    readonly p: Problem;
    readonly others: readonly Requirement[];
    readonly earliest: (id: string) => number;
  },
): TimingConflict['given'] {
  const lags = new Set(of.others.flatMap((each) => ('lag' in each ? [each.lag] : [])));
  const tied = before.filter((id) =>
    of.p.lags.some(
      (lag) =>
        lags.has(lag.id) && ((lag.from === id && lag.to === stage) || (lag.from === stage && lag.to === id)),
    ),
  );
  const last = tied.sort((a, b) => of.earliest(b) - of.earliest(a))[0];
  return last === undefined ? undefined : { stage: last, start: of.earliest(last) };
}

/** The latest start that an upper lag allows once its first stage is where it is. */
function dueOf(p: Problem, lag: Lag, start: number, certainty: Certainty): number {
  const duration = (id: string): number => p.stages.find((stage) => stage.id === id)?.duration ?? 0;
  const point = start + (lag.point === 'end' ? duration(lag.from) : 0);
  const most = lag.atMost === undefined ? Infinity : lengthAt(lag.atMost, certainty, 'at-most', p.draws);
  return point + most - (lag.until === 'end' ? duration(lag.to) : 0);
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
