import type { Interval } from './problem.js';

/** The starts a stage may take: sorted closed intervals `[from[k], to[k]]`; either end may be infinite. */
export interface Domain {
  readonly from: Float64Array;
  readonly to: Float64Array;
}

const ALWAYS: readonly Interval[] = [{ from: -Infinity, to: Infinity }];

/**
 * The starts in [least, greatest] from which a whole duration fits into one interval of the calendar.
 * @param calendar sorted and disjoint; undefined when any time will do
 */
export function domainOf(
  duration: number,
  calendar: readonly Interval[] | undefined,
  least: number,
  greatest: number,
): Domain {
  const hours = calendar ?? ALWAYS;
  const from = new Float64Array(hours.length);
  const to = new Float64Array(hours.length);
  let count = 0;
  for (const open of hours) {
    const first = Math.max(open.from, least);
    const last = Math.min(open.to - duration, greatest);
    if (first > last) continue;
    from[count] = first;
    to[count++] = last;
  }
  return count === hours.length ? { from, to } : { from: from.slice(0, count), to: to.slice(0, count) };
}

/** The least start not before `at`; NaN when there is none. */
export function nextIn(domain: Domain, at: number): number {
  const k = intervalAfter(domain, at);
  return k === domain.to.length ? NaN : Math.max(at, domain.from[k]!);
}

/** The number of the first interval that ends at or after `at`; as many as there are where none does. */
export function intervalAfter({ to }: Domain, at: number): number {
  let low = 0;
  let high = to.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (to[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The end of the interval in which an allowed start lies. */
export function lastInRow(domain: Domain, at: number): number {
  return domain.to[intervalAfter(domain, at)]!;
}

/** Whether a stage may start at `at`. */
export function contains(domain: Domain, at: number): boolean {
  return nextIn(domain, at) === at;
}

/** The domain seen backwards in time: x is in it exactly when −x is in `domain`. */
export function mirrorDomain(domain: Domain): Domain {
  const negated = (ends: Float64Array): Float64Array => {
    const count = ends.length;
    const backwards = new Float64Array(count);
    for (let k = 0; k < count; k++) backwards[count - 1 - k] = -ends[k]!;
    return backwards;
  };
  return { from: negated(domain.to), to: negated(domain.from) };
}
