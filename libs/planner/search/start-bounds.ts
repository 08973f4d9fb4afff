import { leastSolution } from '../fixed-point.js';
import { mirror, type Network } from '../network.js';

/** The earliest and latest start of every node, in minutes. */
export interface StartBounds {
  readonly least: Float64Array;
  readonly greatest: Float64Array;
}

/**
 * The starts that lags and hours leave; a stage that nothing closes may start as late as it takes for all others to be
 * done before it.
 * @returns null when there are none
 */
export function startBounds(net: Network): StartBounds | null {
  const least = leastSolution(net);
  if (least === null) return null;
  const latest = leastSolution(mirror(net));
  if (latest === null) return null;
  const enough = farEnough(net, least);
  return { least, greatest: latest.map((negated, i) => Math.min(-negated, Math.max(enough, least[i]!))) };
}

/** If there is a schedule, there is one in which every stage without a last start has started by then. */
function farEnough(net: Network, least: Float64Array): number {
  let last = least.reduce((a, b) => Math.max(a, b), -Infinity);
  for (const { from, to } of net.domains) {
    for (const end of [from.at(-1)!, to.at(-1)!]) if (Number.isFinite(end)) last = Math.max(last, end);
  }
  const lengths = net.duration.reduce((sum, duration) => sum + duration, 0);
  return net.weight.reduce((sum, weight) => sum + Math.max(0, weight), last + lengths);
}
