import type { Load } from '../loads.js';
import type { Network } from '../network.js';
import { close, NO_PATH } from '../project/longest-paths.js';
import type { StartBounds } from './start-bounds.js';

/** Whether one load can end before another starts. */
export type Ordering = 'must' | 'may' | 'cannot';

/** What lags and hours alone say of the order of loads. Of a load and itself: whether it can take no time. */
export function orderings(
  net: Network,
  { least, greatest }: StartBounds,
): (before: Load, after: Load) => Ordering {
  const far = farthest(net);
  return ({ last }, { first }) => {
    const duration = net.duration[last]!;
    if (greatest[last]! + duration <= least[first]! || far(last, first) >= duration) return 'must';
    if (least[last]! + duration > greatest[first]! || far(first, last) > -duration) return 'cannot';
    return 'may';
  };
}

/** The longest paths between all nodes by lags alone. */
function farthest(net: Network): (from: number, to: number) => number {
  const { count } = net;
  const at = new Int32Array(count * count).fill(NO_PATH);
  for (let i = 0; i < count; i++) at[i * count + i] = 0;
  net.from.forEach((i, e) => {
    const k = i * count + net.to[e]!;
    at[k] = Math.max(at[k]!, net.weight[e]!);
  });
  close({ count, at });
  return (from, to) => at[from * count + to]!;
}
