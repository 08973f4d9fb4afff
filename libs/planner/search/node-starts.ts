import type { Network } from '../network.js';

/** The starts of all nodes of a network, busy intervals included, from those of its stages. */
export function nodeStarts(net: Network, stageStarts: ArrayLike<number>): Float64Array {
  return Float64Array.from({ length: net.count }, (_, i) =>
    i < net.stageCount ? stageStarts[i]! : net.domains[i]!.from[0]!,
  );
}
