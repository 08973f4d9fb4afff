import type { Load } from '../loads.js';
import type { Network } from '../network.js';
import type { LagPaths } from './lag-paths.js';
import type { StartBounds } from './start-bounds.js';

/** Whether one load can end before another starts. */
export type Ordering = 'must' | 'may' | 'cannot';

/** What lags and hours alone say of the order of loads. Of a load and itself: whether it can take no time. */
export function orderings(
  net: Network,
  { least, greatest }: StartBounds,
  paths: LagPaths,
): (before: Load, after: Load) => Ordering {
  return ({ last }, { first }) => {
    const duration = net.duration[last]!;
    if (greatest[last]! + duration <= least[first]! || paths.far(last, first) >= duration) return 'must';
    if (least[last]! + duration > greatest[first]! || paths.far(first, last) > -duration) return 'cannot';
    return 'may';
  };
}
