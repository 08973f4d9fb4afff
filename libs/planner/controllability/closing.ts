import { Cycle, type CycleSide } from './cycle.js';
import { Edges } from './edges.js';
import { NodeHeap } from './node-heap.js';
import { Potential } from './potential.js';
import type { Stnu } from './stnu.js';

/** How far the closing of a contingent link has got; 0 before it begins. */
const OPEN = 1;
const CLOSED = 2;

const CLEAR = -1;

/** Closes the contingent links one by one; see `controllability`. */
export class Closing {
  private readonly edges: Edges;
  private readonly potential: Potential;
  private readonly heap: NodeHeap;
  private readonly state: Uint8Array;
  /** Contingent links by the point that sets them off. */
  private readonly setOff: readonly (readonly number[])[];
  /** For each contingent link and point, the first edge of the shortest path from the point to the link's end. */
  private readonly first: readonly Int32Array[];
  /** Length of these paths, for the link at hand. */
  private readonly length: Float64Array;
  private readonly reached: number[] = [];
  private readonly isReached: Uint8Array;
  private readonly open: number[] = [];

  constructor(private readonly stnu: Stnu) {
    const { points, contingents } = stnu;
    this.edges = new Edges(stnu);
    this.potential = new Potential(this.edges);
    this.heap = new NodeHeap(points);
    this.state = new Uint8Array(contingents.length);
    const setOff = Array.from({ length: points }, (): number[] => []);
    contingents.forEach(({ from }, c) => setOff[from]!.push(c));
    this.setOff = setOff;
    this.first = contingents.map(() => new Int32Array(points).fill(-1));
    this.length = new Float64Array(points);
    this.isReached = new Uint8Array(points);
  }

  /** A negative cycle; null when every link can be closed. */
  conflict(): CycleSide[] | null {
    const cycle = this.potential.meetAll();
    if (cycle !== null) return this.unfolded(cycle);
    for (const c of this.stnu.contingents.keys()) {
      const found = this.state[c] === CLOSED ? null : this.close(c);
      if (found !== null) return found;
    }
    return null;
  }

  /** @returns a conflict that closing the link, or one to close before it, brings to light */
  private close(c: number): CycleSide[] | null {
    this.state[c] = OPEN;
    this.open.push(c);
    for (;;) {
      const met = this.searchBack(c);
      if (met === CLEAR) break;
      if (this.state[met] === OPEN) return this.meetsItself(met);
      const found = this.close(met);
      if (found !== null) return found;
    }
    this.open.pop();
    this.state[c] = CLOSED;
    const { from, min, max } = this.stnu.contingents[c]!;
    for (const i of this.reached) this.edges.add(i, from, Math.max(this.length[i]! - max, -min), c);
    const cycle = this.potential.meetAt(from);
    return cycle && this.unfolded(cycle);
  }

  /**
   * Shortest paths to the end of the link from every point that must wait for it. A path is followed no further once
   * it is as long as the link may vary: from there on the wait is over before the end can come.
   * @returns the link to close first, one still open (itself, too) if that is in conflict with this one, or CLEAR
   */
  private searchBack(c: number): number {
    const { edges, heap, length, reached, isReached } = this;
    const { at } = this.potential;
    const { from, to, min, max } = this.stnu.contingents[c]!;
    const first = this.first[c]!;
    for (const i of reached) isReached[i] = 0;
    reached.length = 0;
    heap.clear();
    heap.lower(to, 0);
    for (let j = heap.pop(); j >= 0; j = heap.pop()) {
      length[j] = heap.key[j]! - at[j]! + at[to]!;
      isReached[j] = 1;
      if (j === from && length[j]! < max) return c;
      reached.push(j);
      if (length[j]! >= max - min) continue;
      const waiting = this.setOff[j]!.find((other) => this.state[other] !== CLOSED);
      if (waiting !== undefined) return waiting;
      for (let e = edges.firstIn[j]!; e >= 0; e = edges.nextIn[e]!) {
        const i = edges.from[e]!;
        if (isReached[i] === 1 || (j === to && this.isLowerCase(e))) continue;
        if (heap.lower(i, heap.key[j]! + edges.weight[e]! + at[i]! - at[j]!)) first[i] = e;
      }
    }
    return CLEAR;
  }

  private isLowerCase(e: number): boolean {
    return e < this.edges.sides.length && this.edges.contingent[e]! >= 0;
  }

  /** The link at hand waits for one that itself, or over others, waits for the link at hand. */
  private meetsItself(waiting: number): CycleSide[] {
    const cycle = new Cycle(this.stnu, this.edges, this.first);
    const round = this.open.slice(this.open.indexOf(waiting));
    round.forEach((each, step) => {
      const before = round[step + 1] ?? waiting;
      cycle.addPath(each, this.stnu.contingents[before]!.from);
    });
    return cycle.sides();
  }

  private unfolded(edges: readonly number[]): CycleSide[] {
    const cycle = new Cycle(this.stnu, this.edges, this.first);
    for (const e of edges.toReversed()) cycle.addEdge(e);
    return cycle.sides();
  }
}
