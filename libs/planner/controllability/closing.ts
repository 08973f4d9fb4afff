import { Edges } from './edges.js';
import { NodeHeap } from './node-heap.js';
import { Potential } from './potential.js';
import type { Side, Stnu } from './stnu.js';

/** How far the closing of a contingent link has got; 0 before it begins. */
const OPEN = 1;
const CLOSED = 2;

const CLEAR = -1;
const IN_CONFLICT = -2;

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
  /** What the conflict goes through, once there is one. */
  private readonly sides = new Set<Side>();
  private readonly upper: readonly Side[];
  private readonly told = new Set<string>();

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
    this.upper = contingents.map((_, index) => ({ kind: 'contingent', index, bound: 'max' }));
  }

  /** The sides of a negative cycle; null when every link can be closed. */
  conflict(): Side[] | null {
    const cycle = this.potential.meetAll();
    if (cycle !== null) this.tell(cycle);
    else if (this.stnu.contingents.every((_, c) => this.state[c] === CLOSED || this.close(c))) return null;
    return [...this.sides];
  }

  /** @returns false on a conflict */
  private close(c: number): boolean {
    this.state[c] = OPEN;
    this.open.push(c);
    for (;;) {
      const met = this.searchBack(c);
      if (met === CLEAR) break;
      if (met === IN_CONFLICT || !this.close(met)) return false;
    }
    this.open.pop();
    this.state[c] = CLOSED;
    const { from, min, max } = this.stnu.contingents[c]!;
    for (const i of this.reached) this.edges.add(i, from, Math.max(this.length[i]! - max, -min), c);
    const cycle = this.potential.meetAt(from);
    if (cycle === null) return true;
    this.tell(cycle);
    return false;
  }

  /**
   * Shortest paths to the end of the link from every point that must wait for it. A path is followed no further once
   * it is as long as the link may vary: from there on the wait is over before the end can come.
   * @returns the link to close first, CLEAR, or IN_CONFLICT
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
      if (j === from && length[j]! < max) return this.meetsItself(c);
      reached.push(j);
      if (length[j]! >= max - min) continue;
      const waiting = this.setOff[j]!.find((other) => this.state[other] !== CLOSED);
      if (waiting !== undefined) return this.state[waiting] === OPEN ? this.meetsItself(waiting) : waiting;
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
  private meetsItself(waiting: number): typeof IN_CONFLICT {
    const round = this.open.slice(this.open.indexOf(waiting));
    round.forEach((each, step) => {
      const before = round[step + 1] ?? waiting;
      this.tellPath(each, this.stnu.contingents[before]!.from);
    });
    return IN_CONFLICT;
  }

  private tell(cycle: readonly number[]): void {
    for (const e of cycle.toReversed()) this.tellEdge(e);
  }

  private tellEdge(e: number): void {
    const side = this.edges.sides[e];
    if (side !== undefined) this.sides.add(side);
    else this.tellPath(this.edges.contingent[e]!, this.edges.from[e]!);
  }

  /** The path from a point over the end of a contingent link to what set it off. */
  private tellPath(c: number, start: number): void {
    const { to } = this.stnu.contingents[c]!;
    for (let i = start; i !== to;) {
      const key = `${c} ${i}`;
      if (this.told.has(key)) return;
      this.told.add(key);
      const e = this.first[c]![i]!;
      this.tellEdge(e);
      i = this.edges.to[e]!;
    }
    this.sides.add(this.upper[c]!);
    // Where the wait ends on its own, it ends because the end cannot come before.
    this.sides.add(this.edges.sides.at(c - this.upper.length)!);
  }
}
