import type { Problem } from '#planner';
import type { Project } from './project.js';

/** The sink of a project as a stage of its problem: it starts when all others have ended. */
export const SINK = 'sink';

/** The stage that an activity of a project is. */
export function stageName({ dur }: Pick<Project, 'dur'>, i: number): string {
  return i === dur.length - 1 ? SINK : `${i}`;
}

/**
 * A project of the literature as the planner is asked: each activity a stage, its resources, lags from start to start, no
 * hours, and the sink, named `SINK`, as what is to come early. The source is fixed at 0.
 */
export function projectProblem({ dur, cap, req, lags }: Project): Problem {
  const name = (i: number): string => stageName({ dur }, i);
  // If there is a schedule, one ends by then: no activity need wait longer than the longest lag from it.
  const waits = [...dur];
  for (const [i, , w] of lags) waits[i] = Math.max(waits[i]!, w);
  const known = (minutes: number) => ({ kind: 'known', minutes }) as const;
  return {
    stages: dur.map((duration, i) => ({
      ...{ id: name(i), duration },
      uses: cap.map((_, r) => ({ resource: `${r}`, amount: req[i]![r]! })),
      ...(i === 0 && { fixed: 0 }),
    })),
    lags: [
      ...lags.map(([i, j, w], k) => ({
        ...{ id: `lag ${k}`, from: name(i), point: 'start' as const, to: name(j), atLeast: known(w) },
      })),
      ...dur.slice(0, -1).map((_, i) => ({
        ...{ id: `end ${i}`, from: name(i), point: 'end' as const, to: SINK, atLeast: known(0) },
      })),
    ],
    holds: [],
    resources: cap.map((capacity, r) => ({ id: `${r}`, capacity, busy: [] })),
    calendars: {},
    deliveries: [[SINK]],
    draws: {},
    from: 0,
    until: waits.reduce((sum, d) => sum + d, 0),
  };
}
