import { domainOf } from '../domains.js';
import type { Interval, Problem, Stage } from '../problem.js';

/** Whether hands are needed: a mere mark, such as the end of a wait, is no beginning. */
export function isHandsOn({ duration, calendar }: Stage): boolean {
  return duration > 0 || calendar !== undefined;
}

/**
 * The minutes at which some hands-on stage that is still open may start, as far as its hours and bounds go: sorted
 * stretches with both ends included. Nothing begins between them.
 */
export function possibleBegins(p: Problem): Interval[] {
  const all = p.stages
    .filter((stage) => stage.fixed === undefined && isHandsOn(stage))
    .flatMap((stage): Interval[] => {
      const calendar = stage.calendar === undefined ? undefined : p.calendars[stage.calendar];
      const least = Math.max(p.from, stage.earliest ?? -Infinity);
      const { from, to } = domainOf(
        stage.duration,
        calendar,
        least,
        Math.min(p.until, stage.latest ?? Infinity),
      );
      return Array.from(from, (first, k) => ({ from: first, to: to[k]! }));
    })
    .sort((a, b) => a.from - b.from);
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of all) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last.to + 1) last.to = Math.max(last.to, to);
    else joined.push({ from, to });
  }
  return joined;
}

/** Every `step` minutes of each stretch from its first minute on, and its last; the latest first. */
export function gridOf(stretches: readonly Interval[], step: number): number[] {
  return [...stretches].reverse().flatMap(({ from, to }) => {
    const points = [to];
    for (let at = from + step * Math.floor((to - from) / step); at >= from; at -= step) {
      if (at < to) points.push(at);
    }
    return points;
  });
}
