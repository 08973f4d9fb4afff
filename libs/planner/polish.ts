import { contains } from './domains.js';
import { deliveriesOf, totalEnd } from './deliveries.js';
import { isOverloadedBy, type ResourceLoads } from './loads.js';
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
  const x = starts.slice();
  const deliveries = deliveriesOf(p);
  const total = (): number =>
    totalEnd(
      deliveries,
      (i) => x[i]!,
      (i) => net.duration[i]!,
    );
  const least = total();
  const touching = incidence(net, all);
  let cost = sittingCost(p, x);
  for (let improved = true; improved;) {
    improved = false;
    for (let i = 0; i < net.stageCount; i++) {
      if (net.fixed[i] === 1 || pinned.has(i) || p.stages[i]!.calendar === undefined) continue;
      for (const at of spotsBeside(p, net, x, i)) {
        const before = x[i]!;
        x[i] = at;
        const moved = holds(net, touching[i]!, x, i) && total() <= least ? sittingCost(p, x) : Infinity;
        if (moved < cost) {
          cost = moved;
          improved = true;
        } else x[i] = before;
      }
    }
  }
  return x;
}

/** What may break when a node moves. */
interface Incidence {
  readonly edges: number[];
  readonly resources: ResourceLoads[];
}

function incidence(net: Network, all: readonly ResourceLoads[]): Incidence[] {
  const touching = net.domains.map((): Incidence => ({ edges: [], resources: [] }));
  for (let e = 0; e < net.from.length; e++) {
    touching[net.from[e]!]!.edges.push(e);
    touching[net.to[e]!]!.edges.push(e);
  }
  for (const resource of all) {
    const nodes = new Set(resource.loads.flatMap(({ first, last }) => [first, last]));
    for (const node of nodes) touching[node]!.resources.push(resource);
  }
  return touching;
}

/** Whether the starts, right but perhaps for node `i`, are all right. */
function holds(net: Network, { edges, resources }: Incidence, x: Float64Array, i: number): boolean {
  return (
    contains(net.domains[i]!, x[i]!) &&
    edges.every((e) => x[net.to[e]!]! >= x[net.from[e]!]! + net.weight[e]!) &&
    !resources.some((resource) => isOverloadedBy(resource, i, x, net.duration))
  );
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
