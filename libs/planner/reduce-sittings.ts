import { contains } from './domains.js';
import { deliveriesOf, totalEnd } from './deliveries.js';
import type { ResourceLoads } from './loads.js';
import type { Network } from './network.js';
import type { Problem } from './problem.js';
import { Room } from './room.js';
import { SittingCost } from './sitting-cost.js';

/** How many places for stages are tried before anyone is asked whether to stop: a small problem is done by then. */
const TRIES = 20_000;

/** The longest that a stage is put off to save a sitting, in minutes: nobody leaves for a month what can be done tomorrow. */
const MOST_PUT_OFF_MIN = 7 * 1440;

/**
 * The schedule with fewer sittings where that costs no later end: stages move, one at a time, to just before or
 * just after another, by a week at most, while every lag, calendar and resource is kept. Descent to a local optimum.
 * @param pinned stages that stay where they are
 * @param stop asked for each stage once a good many places have been tried; what was reached by then is the answer
 */
export function reduceSittings(
  p: Problem,
  net: Network,
  all: readonly ResourceLoads[],
  starts: Float64Array,
  pinned: ReadonlySet<number>,
  stop: () => boolean = () => false,
): Float64Array {
  const x = starts.slice();
  const isNotLater = endGuard(p, net, x);
  const edges = incidence(net);
  const room = new Room(all, x, net.duration);
  const sittings = new SittingCost(p, x);
  let cost = sittings.cost();
  let tries = 0;
  for (let improved = true; improved;) {
    improved = false;
    for (let i = 0; i < net.stageCount; i++) {
      if (net.fixed[i] === 1 || pinned.has(i) || p.stages[i]!.calendar === undefined) continue;
      if (tries > TRIES && stop()) return x;
      for (const at of spotsBeside(p, net, x, i, edges[i]!)) {
        tries++;
        if (at - starts[i]! > MOST_PUT_OFF_MIN) continue;
        const before = x[i]!;
        x[i] = at;
        room.move(i);
        const isAllowed = !room.isOverloadedBy(i) && (at < before || isNotLater(i));
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
        room.move(i);
        if (isAllowed) sittings.move(i, at);
      }
    }
  }
  return x;
}

/** The edges of a node. */
interface Incidence {
  readonly into: number[];
  readonly out: number[];
}

function incidence(net: Network): Incidence[] {
  const edges = net.domains.map((): Incidence => ({ into: [], out: [] }));
  for (let e = 0; e < net.from.length; e++) {
    edges[net.from[e]!]!.out.push(e);
    edges[net.to[e]!]!.into.push(e);
  }
  return edges;
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

/** Just before and just after each other stage in hours, as far as lags and its own hours allow. */
function spotsBeside(
  p: Problem,
  net: Network,
  x: Float64Array,
  i: number,
  { into, out }: Incidence,
): number[] {
  const least = into.reduce((at, e) => Math.max(at, x[net.from[e]!]! + net.weight[e]!), -Infinity);
  const most = out.reduce((at, e) => Math.min(at, x[net.to[e]!]! - net.weight[e]!), Infinity);
  const domain = net.domains[i]!;
  const spots = new Set<number>();
  const add = (at: number): void => {
    if (at >= least && at <= most && at !== x[i] && contains(domain, at)) spots.add(at);
  };
  for (let j = 0; j < net.stageCount; j++) {
    if (j === i || p.stages[j]!.calendar === undefined) continue;
    add(x[j]! + net.duration[j]!);
    add(x[j]! - net.duration[i]!);
  }
  return [...spots].sort((a, b) => a - b);
}
