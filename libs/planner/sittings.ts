import type { Problem, Stage } from './problem.js';

/** One unbroken stretch at the bench. */
export interface Sitting {
  readonly start: number;
  readonly end: number;
  /** Stages by start. */
  readonly stages: readonly string[];
}

/** A break as long as this is time to go and do something else. Common practice, no source. */
export const GAP_MIN = 45;

/**
 * The stretches in which hands are needed: the stages bound to a calendar, grouped while the hours go on and the
 * gaps are short.
 * @param starts start by stage id; stages without one are left out
 * @param options.gapMin the longest gap within a sitting, in minutes
 * @returns sittings by start
 */
export function sittings(
  p: Problem,
  starts: ReadonlyMap<string, number>,
  options: { readonly gapMin?: number } = {},
): Sitting[] {
  const gapMin = options.gapMin ?? GAP_MIN;
  const placed = p.stages
    .flatMap((stage) => {
      const start = starts.get(stage.id);
      return stage.calendar === undefined || start === undefined ? [] : [{ stage, start }];
    })
    .sort((a, b) => a.start - b.start);
  const found: { start: number; end: number; stages: string[] }[] = [];
  for (const { stage, start } of placed) {
    const end = start + stage.duration;
    const last = found.at(-1);
    if (last && start - last.end <= gapMin && hoursOpenedAt(p, stage, start) <= last.start) {
      last.end = Math.max(last.end, end);
      last.stages.push(stage.id);
    } else found.push({ start, end, stages: [stage.id] });
  }
  return found;
}

/** When the calendar interval in which it lies began; a fixed stage may lie outside all of them. */
export function hoursOpenedAt(p: Problem, stage: Stage, start: number): number {
  const calendar = p.calendars[stage.calendar ?? ''] ?? [];
  let low = 0;
  let high = calendar.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (calendar[middle]!.from <= start) low = middle + 1;
    else high = middle;
  }
  const open = calendar[low - 1];
  return open !== undefined && start + stage.duration <= open.to ? open.from : -Infinity;
}
