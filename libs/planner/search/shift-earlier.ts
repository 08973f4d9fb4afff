import { chain } from '../chain.js';
import { raise } from '../fixed-point.js';
import { firstOverload, type ResourceLoads } from '../loads.js';
import { addEdge, dropEdges, type Network } from '../network.js';

/**
 * The same order on every resource, each node as early as that lets it be; the starts as they are where that breaks it.
 * @param starts a schedule
 * @param least what no start may fall below; within the domains
 */
export function shiftEarlier(
  net: Network,
  all: readonly ResourceLoads[],
  starts: Float64Array,
  least: Float64Array,
): Float64Array {
  const size = net.from.length;
  for (const { before, after } of chain(all, starts, net.duration)) {
    if (net.fixed[before] === 0 || net.fixed[after] === 0) addEdge(net, before, after, net.duration[before]!);
  }
  const x = least.slice();
  const stuck = raise(net, x, null);
  dropEdges(net, size);
  if (stuck >= 0) throw new Error('the order of a schedule has no solution');
  // A hold that took no time, because its end came first, may take some now: no order on a resource rules that out.
  return firstOverload(all, x, net.duration) === undefined ? x : starts;
}
