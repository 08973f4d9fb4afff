import { contains } from './domains.js';
import { deliveriesOf, totalEnd } from './deliveries.js';
import { isOverloadedBy, type ResourceLoads } from './loads.js';
import type { Network } from './network.js';
import type { Problem } from './problem.js';
import { SittingCost } from './sitting-cost.js';

/**
 * The schedule with fewer sittings where that costs no later end: stages move, one at a time, to just before or
 * just after another, while every lag, calendar and resource is kept. Descent to a local optimum.
 * @param pinned stages that stay where they are
 */
export function reduceSittings(
  p: Problem,
  net: Network,
  all: readonly ResourceLoads[],
  starts: Float64Array,
  pinned: ReadonlySet<number>,
): Float64Array {
  const x = starts.slice();
  const isNotLater = endGuard(p, net, x);
  const touching = incidence(net, all);
  const sittings = new SittingCost(p, x);
  let cost = sittings.cost();
  for (let improved = true; improved;) {
    improved = false;
    for (let i = 0; i < net.stageCount; i++) {
      if (net.fixed[i] === 1 || pinned.has(i) || p.stages[i]!.calendar === undefined) continue;
      for (const at of spotsBeside(p, net, x, i, touching[i]!)) {
        const before = x[i]!;
        x[i] = at;
        const isAllowed = fits(net, touching[i]!, x, i) && (at < before || isNotLater(i));
        if (isAllowed) {
          sittings.move(i, before);
          const moved = sittings.cost();
          if (moved < cost) {
            cost = moved;
            improved = true;
            continue;
          }
        }
        x[i] = before;
        if (isAllowed) sittings.move(i, at);
      }
    }
  }
  return x;
}

/** What may break when a node moves. */
interface Incidence {
  readonly into: number[];
  readonly out: number[];
  readonly resources: ResourceLoads[];
}

function incidence(net: Network, all: readonly ResourceLoads[]): Incidence[] {
  const touching = net.domains.map((): Incidence => ({ into: [], out: [], resources: [] }));
  for (let e = 0; e < net.from.length; e++) {
    touching[net.from[e]!]!.out.push(e);
    touching[net.to[e]!]!.into.push(e);
  }
  for (const resource of all) {
    const nodes = new Set(resource.loads.flatMap(({ first, last }) => [first, last]));
    for (const node of nodes) touching[node]!.resources.push(resource);
  }
  return touching;
}

/** Asks whether the ends of all deliveries add up to no more than at first, now that one stage has moved. */
function endGuard(p: Problem, net: Network, x: Float64Array): (moved: number) => boolean {
  const deliveries = deliveriesOf(p);
  const of = p.stages.map((): number[] => []);
  deliveries.forEach((stages, k) => stages.forEach((i) => of[i]!.push(k)));
  const total = (): number =>
    totalEnd(
      deliveries,
      (i) => x[i]!,
      (i) => net.duration[i]!,
    );
  const least = total();
  return (moved) => of[moved]!.length === 0 || total() <= least;
}

/** Whether node `i` fits where it is among all others. */
function fits(net: Network, { resources }: Incidence, x: Float64Array, i: number): boolean {
  return (
    contains(net.domains[i]!, x[i]!) &&
    !resources.some((resource) => isOverloadedBy(resource, i, x, net.duration))
  );
}

/** Just before and just after each other stage in hours, as far as lags allow. */
function spotsBeside(
  p: Problem,
  net: Network,
  x: Float64Array,
  i: number,
  { into, out }: Incidence,
): number[] {
  const least = into.reduce((at, e) => Math.max(at, x[net.from[e]!]! + net.weight[e]!), -Infinity);
  const most = out.reduce((at, e) => Math.min(at, x[net.to[e]!]! - net.weight[e]!), Infinity);
  const spots = new Set<number>();
  const add = (at: number): void => {
    if (at >= least && at <= most && at !== x[i]) spots.add(at);
  };
  for (let j = 0; j < net.stageCount; j++) {
    if (j === i || p.stages[j]!.calendar === undefined) continue;
    add(x[j]! + net.duration[j]!);
    add(x[j]! - net.duration[i]!);
  }
  return [...spots].sort((a, b) => a - b);
}
