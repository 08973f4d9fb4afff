import type { Random } from '#units';
import { raise } from './fixed-point.js';
import { firstOverload, type Load, type ResourceLoads } from './loads.js';
import { addEdge, dropEdges, type Network } from './network.js';

/** What a search came to. `proved`: no schedule ends earlier. */
export type Found =
  | {
      readonly status: 'found';
      readonly starts: Float64Array;
      readonly ready: number;
      readonly proved: boolean;
    }
  | { readonly status: 'infeasible' }
  | { readonly status: 'limit' };

/**
 * Starts that respect the network and the resources and end as early as the search can make them.
 *
 * Take the least solution; where resources suffice, it is the best under the orders posted so far. Else the
 * first overload is a set of loads of which some two must be put in order: branch over all ordered pairs,
 * each branch excluding the orders tried before it. Depth first, best branch first, with bounding on the
 * end; restarted with other tie-breaks while the limit lasts, the last pass being complete.
 *
 * @param root least solution of `net`, resources aside
 * @param limit nodes to look at, over all passes
 * @param enough a schedule that ends by then ends the search
 */
export function search(
  net: Network,
  all: readonly ResourceLoads[],
  root: Float64Array,
  random: Random,
  limit: number,
  enough = -Infinity,
): Found {
  const bound = readyAt(net, root);
  const target = Math.max(bound, enough);
  const run: Run = { net, all, random, bound, target, nodes: 0, limit: 0, noise: 0, best: null };
  const size = net.from.length;
  for (const share of [1 / 8, 1 / 4, 1]) {
    run.limit = share === 1 ? limit : run.nodes + Math.ceil(limit * share);
    const complete = descend(run, root);
    dropEdges(net, size);
    const { best } = run;
    if (best) {
      const early = best.ready <= target;
      if (complete || early) return { status: 'found', ...best, proved: !early || best.ready <= bound };
    } else if (complete) return { status: 'infeasible' };
    run.noise = 0.2;
  }
  return run.best ? { status: 'found', ...run.best, proved: false } : { status: 'limit' };
}

/** The end of the last stage. */
export function readyAt(net: Network, starts: Float64Array): number {
  let ready = -Infinity;
  for (let i = 0; i < net.stageCount; i++) ready = Math.max(ready, starts[i]! + net.duration[i]!);
  return ready;
}

interface Run {
  readonly net: Network;
  readonly all: readonly ResourceLoads[];
  readonly random: Random;
  /** No schedule ends before this. */
  readonly bound: number;
  /** A schedule that ends by then is good enough to stop. */
  readonly target: number;
  nodes: number;
  limit: number;
  /** How far scores are blurred, as a share. */
  noise: number;
  best: { starts: Float64Array; ready: number } | null;
}

interface Branch {
  readonly before: number;
  readonly after: number;
  readonly ready: number;
  readonly sum: number;
}

/** @returns whether nothing better is left below; false when the limit cut it short */
function descend(run: Run, x: Float64Array): boolean {
  const { net } = run;
  if (run.nodes++ >= run.limit) return false;
  if (run.best && readyAt(net, x) >= run.best.ready) return true;
  const overload = firstOverload(run.all, x, net.duration);
  if (overload === undefined) {
    run.best = { starts: x.slice(), ready: readyAt(net, x) };
    return true;
  }
  const size = net.from.length;
  const excluded: number[] = [];
  for (const { before, after } of branches(run, x, overload)) {
    const mark = net.from.length;
    addEdge(net, before, after, net.duration[before]!);
    const child = x.slice();
    if (raise(net, child, [before, ...excluded]) < 0) {
      if (!descend(run, child)) return false;
      if (run.best && run.best.ready <= run.target) break;
    }
    dropEdges(net, mark);
    // From here on the other way round only: `after` starts before `before` ends.
    addEdge(net, after, before, 1 - net.duration[before]!);
    excluded.push(after);
  }
  dropEdges(net, size);
  return true;
}

function branches(run: Run, x: Float64Array, overload: readonly Load[]): Branch[] {
  const { net } = run;
  const found: Branch[] = [];
  for (const a of overload) {
    for (const b of overload) {
      const [before, after] = [a.last, b.first];
      if (a === b || (net.fixed[before] === 1 && net.fixed[after] === 1)) continue;
      const mark = net.from.length;
      addEdge(net, before, after, net.duration[before]!);
      const child = x.slice();
      if (raise(net, child, [before]) < 0) {
        const blur = 1 + run.noise * run.random.next();
        const ready = readyAt(net, child) - run.bound;
        found.push({ before, after, ready: ready * blur, sum: (sumOf(child) - sumOf(x)) * blur });
      }
      dropEdges(net, mark);
    }
  }
  return found.sort((a, b) => a.ready - b.ready || a.sum - b.sum);
}

function sumOf(x: Float64Array): number {
  return x.reduce((sum, value) => sum + value, 0);
}
