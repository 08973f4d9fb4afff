import type { Edges } from './edges.js';
import type { Side, Stnu } from './stnu.js';

/** A side of a negative cycle, and how often the cycle goes through it. */
export interface CycleSide extends Side {
  /** 0 for the lower bound of a contingent link on which a step rests that the cycle does not go through. */
  readonly times: number;
}

/** A negative cycle, unfolded from derived edges into the sides of the network that they came from. */
export class Cycle {
  /** In the order in which the cycle first goes through them. */
  private readonly order = new Set<Side>();
  private readonly told = new Set<string>();
  private readonly edgeTimes: Float64Array;
  private readonly upperTimes: Float64Array;
  private readonly upper: readonly Side[];

  /** @param first for each contingent link and point, the first edge of the shortest path to the link's end */
  constructor(
    private readonly stnu: Stnu,
    private readonly edges: Edges,
    private readonly first: readonly Int32Array[],
  ) {
    this.edgeTimes = new Float64Array(edges.size);
    this.upperTimes = new Float64Array(stnu.contingents.length);
    this.upper = stnu.contingents.map((_, index) => ({ kind: 'contingent', index, bound: 'max' }));
  }

  /** Adds an edge to the cycle. */
  addEdge(e: number): void {
    this.edgeTimes[e]! += 1;
    this.tellEdge(e);
  }

  /** Adds the path from a point over the end of a contingent link to what set it off. */
  addPath(c: number, start: number): void {
    this.countPath(c, start, 1);
    this.tellPath(c, start);
  }

  /** All sides, each once, of what was added. */
  sides(): CycleSide[] {
    const { edges, edgeTimes, upperTimes, upper } = this;
    const given = edges.sides.length;
    // What an edge was derived from was there before it; so all that asks for an edge is counted when it is unfolded.
    for (let e = edges.size - 1; e >= given; e--) {
      if (edgeTimes[e]! > 0) this.countPath(edges.contingent[e]!, edges.from[e]!, edgeTimes[e]!);
    }
    const times = new Map<Side, number>([
      ...edges.sides.map((side, e): [Side, number] => [side, edgeTimes[e]!]),
      ...upper.map((side, c): [Side, number] => [side, upperTimes[c]!]),
    ]);
    return [...this.order].map((side) => ({ ...side, times: times.get(side)! }));
  }

  private countPath(c: number, start: number, times: number): void {
    for (const e of this.pathOf(c, start)) this.edgeTimes[e]! += times;
    this.upperTimes[c]! += times;
  }

  private tellEdge(e: number): void {
    const side = this.edges.sides[e];
    if (side !== undefined) this.order.add(side);
    else this.tellPath(this.edges.contingent[e]!, this.edges.from[e]!);
  }

  private tellPath(c: number, start: number): void {
    for (const e of this.pathOf(c, start)) {
      const key = `${c} ${this.edges.from[e]!}`;
      if (this.told.has(key)) return;
      this.told.add(key);
      this.tellEdge(e);
    }
    this.order.add(this.upper[c]!);
    // Where the wait ends on its own, it ends because the end cannot come before.
    this.order.add(this.edges.sides.at(c - this.upper.length)!);
  }

  private *pathOf(c: number, start: number): Generator<number> {
    const { to } = this.stnu.contingents[c]!;
    for (let i = start; i !== to;) {
      const e = this.first[c]![i]!;
      yield e;
      i = this.edges.to[e]!;
    }
  }
}
