import { mirrorDomain, type Domain } from './domains.js';
import type { Requirement } from './problem.js';

/**
 * A temporal network over whole-minute starts: x[to] ≥ x[from] + weight for every edge, x[i] in domains[i].
 * Nodes are the stages in the order of the problem, then one fixed node for each busy interval.
 */
export interface Network {
  readonly count: number;
  readonly stageCount: number;
  readonly duration: Float64Array;
  readonly domains: readonly Domain[];
  /** 1 where the start is a constant. */
  readonly fixed: Uint8Array;
  /** Edges as parallel stacks, so that a search can post and take back without allocation. */
  readonly from: number[];
  readonly to: number[];
  readonly weight: number[];
  /** What each edge stands for; null for those posted by a search. */
  readonly tags: (Requirement | null)[];
  /** Edges that leave each node. */
  readonly out: number[][];
  readonly scratch: Scratch;
}

/** Working memory of the fixed point. */
export interface Scratch {
  readonly queue: Int32Array;
  readonly queued: Uint8Array;
  readonly depth: Int32Array;
  /** The nodes that the latest fixed point came by, seeds included: the first `touchedCount` of these. */
  readonly touched: Int32Array;
  readonly isTouched: Uint8Array;
  touchedCount: number;
  /** The start of each touched node before. */
  readonly before: Float64Array;
  /** The edge that last moved each node, or -1 when its domain did. */
  readonly by: Int32Array;
}

/** A network without edges. */
export function emptyNetwork(
  stageCount: number,
  duration: Float64Array,
  domains: readonly Domain[],
  fixed: Uint8Array,
): Network {
  const count = domains.length;
  return {
    count,
    stageCount,
    duration,
    domains,
    fixed,
    from: [],
    to: [],
    weight: [],
    tags: [],
    out: Array.from({ length: count }, () => []),
    scratch: {
      queue: new Int32Array(count + 1),
      queued: new Uint8Array(count),
      depth: new Int32Array(count),
      touched: new Int32Array(count),
      isTouched: new Uint8Array(count),
      touchedCount: 0,
      before: new Float64Array(count),
      by: new Int32Array(count).fill(-1),
    },
  };
}

/** Posts x[to] ≥ x[from] + weight. */
export function addEdge(
  net: Network,
  from: number,
  to: number,
  weight: number,
  tag: Requirement | null = null,
): void {
  net.out[from]!.push(net.from.length);
  net.from.push(from);
  net.to.push(to);
  net.weight.push(weight);
  net.tags.push(tag);
}

/** Takes back the edges posted last, until `size` are left. */
export function dropEdges(net: Network, size: number): void {
  while (net.from.length > size) {
    net.out[net.from.pop()!]!.pop();
    net.to.pop();
    net.weight.pop();
    net.tags.pop();
  }
}

/** The same network backwards in time: its least solution is the greatest of `net`, negated. Edge numbers stay. */
export function mirror(net: Network): Network {
  const back = emptyNetwork(net.stageCount, net.duration, net.domains.map(mirrorDomain), net.fixed);
  net.from.forEach((from, e) => addEdge(back, net.to[e]!, from, net.weight[e]!, net.tags[e]));
  return back;
}
