import type { Side, Stnu } from './stnu.js';

/**
 * Edges t(to) ≤ t(from) + weight, in lists by either end. First those of the network (ordinary and lower case, each
 * with the side it stands for), then those derived from contingent links. Upper-case edges are left to the search.
 */
export class Edges {
  readonly sides: Side[] = [];
  /** The edge after this one in the list of its start, or its end; -1 is the last. */
  nextOut: Int32Array;
  nextIn: Int32Array;
  from: Int32Array;
  to: Int32Array;
  weight: Float64Array;
  /** The contingent link whose lower-case edge this is or from which it was derived; -1 for ordinary ones. */
  contingent: Int32Array;
  readonly firstOut: Int32Array;
  readonly firstIn: Int32Array;
  size = 0;

  constructor(readonly stnu: Stnu) {
    const room = 2 * stnu.requirements.length + stnu.contingents.length;
    this.nextOut = new Int32Array(room);
    this.nextIn = new Int32Array(room);
    this.from = new Int32Array(room);
    this.to = new Int32Array(room);
    this.weight = new Float64Array(room);
    this.contingent = new Int32Array(room);
    this.firstOut = new Int32Array(stnu.points).fill(-1);
    this.firstIn = new Int32Array(stnu.points).fill(-1);
    stnu.requirements.forEach(({ from, to, min, max }, index) => {
      if (max !== undefined) this.given({ kind: 'requirement', index, bound: 'max' }, from, to, max, -1);
      if (min !== undefined) this.given({ kind: 'requirement', index, bound: 'min' }, to, from, -min, -1);
    });
    stnu.contingents.forEach(({ from, to, min }, index) => {
      this.given({ kind: 'contingent', index, bound: 'min' }, from, to, min, index);
    });
  }

  add(from: number, to: number, weight: number, contingent: number): void {
    if (this.size === this.from.length) this.grow();
    const e = this.size++;
    this.from[e] = from;
    this.to[e] = to;
    this.weight[e] = weight;
    this.contingent[e] = contingent;
    this.nextOut[e] = this.firstOut[from]!;
    this.firstOut[from] = e;
    this.nextIn[e] = this.firstIn[to]!;
    this.firstIn[to] = e;
  }

  private given(side: Side, from: number, to: number, weight: number, contingent: number): void {
    this.sides.push(side);
    this.add(from, to, weight, contingent);
  }

  private grow(): void {
    const room = 2 * this.size + 16;
    const longer = (old: Int32Array): Int32Array => {
      const grown = new Int32Array(room);
      grown.set(old);
      return grown;
    };
    this.nextOut = longer(this.nextOut);
    this.nextIn = longer(this.nextIn);
    this.from = longer(this.from);
    this.to = longer(this.to);
    this.contingent = longer(this.contingent);
    const weight = new Float64Array(room);
    weight.set(this.weight);
    this.weight = weight;
  }
}
