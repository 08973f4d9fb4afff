import type { OrderLink, UncertainProject } from './uncertain-project.js';

/** How far towards the longest duration an activity that has not ended is taken to last, most careful first. */
const LEVELS = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0];

export type Outcome =
  | { readonly status: 'done'; readonly starts: Float64Array; readonly makespan: number }
  /** From this moment on no start is left that keeps all lags. */
  | { readonly status: 'failed'; readonly at: number };

/**
 * Carries a project through as one would who learns a duration only when the activity ends. At every event the rest is
 * laid out anew at the earliest, with each activity that has not ended taken to last as long as it may, or as long as
 * leaves any way to keep the lags; what is due now is started. Maximum lags hold an activity back until what must
 * follow it in time is sure to be able to.
 *
 * If the order is controllable this never fails: durations stand only in links, which grow with them, so a layout
 * that holds at the longest durations holds at all others, and what ends early only lets others start earlier.
 * @param order links that keep the resources, as of `partialOrder`
 * @param durations within the bounds of the project
 */
export function executePolicy(
  project: UncertainProject,
  order: readonly OrderLink[],
  durations: readonly number[],
): Outcome {
  const count = project.shortest.length;
  const run: Run = {
    ...{ project, durations, arcs: arcsOf(project, order) },
    starts: new Float64Array(count).fill(NaN),
    layout: new Float64Array(count),
    assumed: new Float64Array(count),
  };
  for (let now = 0; ;) {
    if (!layOut(run, now)) return { status: 'failed', at: now };
    const due = [...run.layout.keys()].filter((i) => isWaiting(run, i) && run.layout[i] === now);
    for (const i of due) run.starts[i] = now;
    if (!run.starts.some(Number.isNaN)) break;
    // What has just started may also have ended, and let others start.
    if (due.length === 0) now = nextEvent(run, now);
  }
  return { status: 'done', starts: run.starts, makespan: run.starts.at(-1)! };
}

interface Run {
  readonly project: UncertainProject;
  /** Looked at only for activities that have ended. */
  readonly durations: readonly number[];
  readonly arcs: readonly Arc[];
  /** NaN for what has not started. */
  readonly starts: Float64Array;
  readonly layout: Float64Array;
  readonly assumed: Float64Array;
}

/** t(to) ≥ t(from) + lag, or + the duration of `from` when lag is null. */
interface Arc {
  readonly from: number;
  readonly to: number;
  readonly lag: number | null;
}

function arcsOf({ shortest, lags }: UncertainProject, order: readonly OrderLink[]): Arc[] {
  const sink = shortest.length - 1;
  return [
    ...lags.map(([from, to, lag]) => ({ from, to, lag })),
    ...order.map(([from, to]) => ({ from, to, lag: null })),
    ...[...shortest.keys()].filter((from) => from !== sink).map((from) => ({ from, to: sink, lag: null })),
  ];
}

function isWaiting({ starts }: Run, i: number): boolean {
  return Number.isNaN(starts[i]!);
}

/** The earliest starts of the rest at the most careful level that leaves any; false when none does. */
function layOut(run: Run, now: number): boolean {
  return LEVELS.some((level) => {
    run.project.shortest.forEach((shortest, i) => {
      const longest = run.project.longest[i]!;
      const start = run.starts[i]!;
      const actual = run.durations[i]!;
      // What runs on is known to end later than now; nothing more of its duration is.
      run.assumed[i] =
        start + actual <= now
          ? actual
          : Math.max(Math.round(shortest + level * (longest - shortest)), start < now ? now + 1 - start : 0);
    });
    return isMet(run, now);
  });
}

function isMet(run: Run, now: number): boolean {
  const { arcs, layout, starts, assumed } = run;
  layout.forEach((_, i) => (layout[i] = isWaiting(run, i) ? now : starts[i]!));
  for (let round = 0; round <= layout.length; round++) {
    let isRaised = false;
    for (const { from, to, lag } of arcs) {
      const earliest = layout[from]! + (lag ?? assumed[from]!);
      if (earliest <= layout[to]!) continue;
      if (!isWaiting(run, to)) return false;
      layout[to] = earliest;
      isRaised = true;
    }
    if (!isRaised) return true;
  }
  return false;
}

/** The next end, overrun or due start. */
function nextEvent(run: Run, now: number): number {
  const { starts, layout, durations, assumed } = run;
  let next = Infinity;
  for (let i = 0; i < starts.length; i++) {
    const times = isWaiting(run, i)
      ? [layout[i]!]
      : [starts[i]! + durations[i]!, starts[i]! + Math.min(durations[i]!, assumed[i]!)];
    for (const at of times) if (at > now) next = Math.min(next, at);
  }
  return next;
}
