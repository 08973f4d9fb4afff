import type { Edges } from './edges.js';
import { NodeHeap } from './node-heap.js';

/**
 * Times that meet all edges, f(to) ≤ f(from) + weight: with them every edge has a cost of 0 or more for Dijkstra's
 * searches. Changes that find a negative cycle return its edges, last first, and leave the times of no use.
 */
export class Potential {
  readonly at: Float64Array;
  private readonly heap: NodeHeap;
  /** The edge that last lowered each node. */
  private readonly by: Int32Array;

  constructor(private readonly edges: Edges) {
    const { points } = edges.stnu;
    this.at = new Float64Array(points);
    this.heap = new NodeHeap(points);
    this.by = new Int32Array(points).fill(-1);
  }

  /** Bellman and Ford's rounds, each over the nodes that the one before has lowered. */
  meetAll(): number[] | null {
    const { edges, at, by } = this;
    const count = at.length;
    let lowered = Int32Array.from(at.keys());
    for (let round = 0; lowered.length > 0; round++) {
      const next = new Set<number>();
      for (const i of lowered) {
        for (let e = edges.firstOut[i]!; e >= 0; e = edges.nextOut[e]!) {
          const j = edges.to[e]!;
          const bound = at[i]! + edges.weight[e]!;
          if (bound >= at[j]!) continue;
          at[j] = bound;
          by[j] = e;
          next.add(j);
        }
      }
      lowered = Int32Array.from(next);
      if (round === count && lowered.length > 0) return this.cycleBefore(lowered[0]!);
    }
    return null;
  }

  /**
   * Meets again all edges after some were added that all end at `node` (Cotton and Maler, “Fast and flexible
   * difference constraint propagation for DPLL(T)”, SAT 2006; from memory).
   */
  meetAt(node: number): number[] | null {
    const { edges, at, by, heap } = this;
    let least = at[node]!;
    for (let e = edges.firstIn[node]!; e >= 0; e = edges.nextIn[e]!) {
      least = Math.min(least, at[edges.from[e]!]! + edges.weight[e]!);
    }
    if (least === at[node]!) return null;
    heap.clear();
    heap.lower(node, least - at[node]!);
    for (let i = heap.pop(); i >= 0; i = heap.pop()) {
      at[i] = at[i]! + heap.key[i]!;
      for (let e = edges.firstOut[i]!; e >= 0; e = edges.nextOut[e]!) {
        const j = edges.to[e]!;
        const excess = at[i]! + edges.weight[e]! - at[j]!;
        if (excess >= 0) continue;
        if (j === node) return [e, ...this.pathTo(i, node)];
        if (heap.lower(j, excess)) by[j] = e;
      }
    }
    return null;
  }

  /** The edges from `start` by which `node` was lowered, last first. */
  private pathTo(node: number, start: number): number[] {
    const path: number[] = [];
    for (let i = node; i !== start; i = this.edges.from[this.by[i]!]!) path.push(this.by[i]!);
    return path;
  }

  private cycleBefore(node: number): number[] {
    const before = (i: number): number => this.edges.from[this.by[i]!]!;
    let on = node;
    // After as many steps as there are nodes, one is on the cycle.
    for (let step = 0; step < this.at.length; step++) on = before(on);
    return [this.by[on]!, ...this.pathTo(before(on), on)];
  }
}
