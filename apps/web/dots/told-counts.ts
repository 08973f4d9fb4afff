import type { Stretch } from '../look/local-days.js';
import { countBy } from './dot-places.js';

export interface ToldCount {
  readonly at: number;
  readonly count: number;
}

/** More is no help to the memory. */
const MOST = 4;

/**
 * How many of the times have come by when the maker may look: as their hours open, each where the number is another than before. Where
 * they never open in between, by the quarters.
 * @param times ascending, not empty
 * @param hours ascending, in milliseconds like the times
 * @returns at most four, ascending in both; the last is that at which all have come, or the latest there is
 */
export function toldCounts(times: readonly number[], hours: readonly Stretch[]): readonly ToldCount[] {
  const opening = hours.map(({ from }) => ({ at: from, count: countBy(times, from) }));
  const telling = opening.filter(
    ({ count }, i) => count > 0 && count !== (i === 0 ? 0 : opening[i - 1]!.count),
  );
  const all = telling.length > 0 ? telling : quarters(times);
  if (all.length <= MOST) return all;
  return Array.from({ length: MOST }, (_, i) => all[Math.round((i * (all.length - 1)) / (MOST - 1))]!);
}

function quarters(times: readonly number[]): ToldCount[] {
  return [1, 2, 3, 4].map((quarter) => {
    const at = times[Math.ceil((quarter * times.length) / 4) - 1]!;
    return { at, count: countBy(times, at) };
  });
}
