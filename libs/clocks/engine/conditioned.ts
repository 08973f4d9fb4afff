import type { LogNormal, Truncation } from './log-normal.js';

/**
 * Adds an observation to what has been seen. The tighter bound counts. Where the two contradict each other
 * the later one counts and the earlier bound it contradicts is dropped: a maker who finds soft what
 * called firm yesterday has looked again.
 *
 * @param seen what was known
 * @param more what has been seen since: `{ above: zOf(f, t) }` for “not yet at t”, `below` for “already at t”
 * @returns bounds with room between them
 * @throws RangeError when `more` contradicts itself
 */
export function conditioned(seen: Truncation, more: Truncation): Truncation {
  if (!roomBetween(more.above, more.below)) {
    throw new RangeError(`above ${String(more.above)} and below ${String(more.below)} at once`);
  }
  const keptAbove = roomBetween(seen.above, more.below) ? seen.above : undefined;
  const keptBelow = roomBetween(more.above, seen.below) ? seen.below : undefined;
  const above = Math.max(keptAbove ?? -Infinity, more.above ?? -Infinity);
  const below = Math.min(keptBelow ?? Infinity, more.below ?? Infinity);
  return { ...(above > -Infinity && { above }), ...(below < Infinity && { below }) };
}

/**
 * A time on a forecast's own scale: (ln t − ln median) / σ.
 * @param minutes 0 or more, from the state's start; 0 gives −∞
 * @throws RangeError for a time before the start
 */
export function zOf(f: LogNormal, minutes: number): number {
  if (!(minutes >= 0)) throw new RangeError(`${String(minutes)} minutes is before the clock started`);
  return (Math.log(minutes) - Math.log(f.medianMin)) / f.sigma;
}

function roomBetween(above = -Infinity, below = Infinity): boolean {
  return above < below;
}
