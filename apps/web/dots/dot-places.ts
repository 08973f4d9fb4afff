/** A dot that stands for one of the equally likely times. */
export interface DotPlace {
  /** Its time, milliseconds since 1970. */
  readonly at: number;
  /** Pixels of its middle from the left: exactly at its time. */
  readonly x: number;
  /** How many dots it stands above the axis, from 0. */
  readonly level: number;
}

/**
 * Dots at their times, each on the lowest level on which it touches no other. None is moved sideways, as those of a histogram would be,
 * so what stands left of a time has come by then.
 * @param times ascending
 * @param x pixels of a time, growing with it
 * @param size of a dot, in pixels
 */
export function dotPlaces(
  times: readonly number[],
  x: (at: number) => number,
  size: number,
): readonly DotPlace[] {
  /** Where the last dot of each level ends. */
  const ends: number[] = [];
  return times.map((at) => {
    const middle = x(at);
    const free = ends.findIndex((end) => end <= middle - size / 2);
    const level = free < 0 ? ends.length : free;
    ends[level] = middle + size / 2;
    return { at, x: middle, level };
  });
}

/** How many of the times have come by then. */
export function countBy(times: readonly number[], by: number): number {
  return times.filter((at) => at <= by).length;
}
