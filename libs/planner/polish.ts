import { contains } from './domains.js';
import { deliveriesOf, totalEnd } from './deliveries.js';
import { firstOverload, type ResourceLoads } from './loads.js';
import type { Network } from './network.js';
import type { Problem } from './problem.js';
import { sittings } from './sittings.js';

/**
 * The schedule with fewer sittings where that costs no later end: stages move, one at a time, to just before or
 * just after another, while every lag, calendar and resource is kept. Descent to a local optimum.
 * @param pinned stages that stay where they are
 */
export function joinSittings(
  p: Problem,
  net: Network,
  all: readonly ResourceLoads[],
  starts: Float64Array,
  pinned: ReadonlySet<number>,
): Float64Array {
  let best = starts.slice();
  let bestCost = sittingCost(p, best);
  const deliveries = deliveriesOf(p);
  const end = (x: Float64Array): number =>
    totalEnd(
      deliveries,
      (i) => x[i]!,
      (i) => net.duration[i]!,
    );
  const total = end(best);
  for (let improved = true; improved;) {
    improved = false;
    for (let i = 0; i < net.stageCount; i++) {
      const stage = p.stages[i]!;
      if (net.fixed[i] === 1 || pinned.has(i) || stage.calendar === undefined) continue;
      for (const at of spotsBeside(p, net, best, i)) {
        const moved = best.slice();
        moved[i] = at;
        if (end(moved) > total || !holds(net, all, moved, i)) continue;
        const cost = sittingCost(p, moved);
        if (cost >= bestCost) continue;
        best = moved;
        bestCost = cost;
        improved = true;
      }
    }
  }
  return best;
}

/** Whether the starts, right but perhaps for node `i`, are all right. */
function holds(net: Network, all: readonly ResourceLoads[], x: Float64Array, i: number): boolean {
  if (!contains(net.domains[i]!, x[i]!)) return false;
  for (let e = 0; e < net.from.length; e++) {
    if (x[net.to[e]!]! < x[net.from[e]!]! + net.weight[e]!) return false;
  }
  return firstOverload(all, x, net.duration) === undefined;
}

function spotsBeside(p: Problem, net: Network, x: Float64Array, i: number): number[] {
  const spots = new Set<number>();
  for (let j = 0; j < net.stageCount; j++) {
    if (j === i || p.stages[j]!.calendar === undefined) continue;
    spots.add(x[j]! + net.duration[j]!).add(x[j]! - net.duration[i]!);
  }
  return [...spots].filter((at) => at !== x[i]).sort((a, b) => a - b);
}

/** Sittings first, then the minutes spent in them. */
function sittingCost(p: Problem, x: Float64Array): number {
  const found = sittings(p, new Map(p.stages.map((stage, i) => [stage.id, x[i]!])));
  return found.reduce((cost, { start, end }) => cost + (end - start), found.length * 1e6);
}
