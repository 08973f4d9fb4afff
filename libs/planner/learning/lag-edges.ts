import { Kind, type Trail } from './trail.js';

/** A lag between two sides: bound[to] ≥ bound[from] + weight, where the choice (side, value) holds if there is one. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  /** The side of the choice on which the lag hangs, or −1. */
  readonly choice: number;
}

/** The value at which the literal of a choice holds: its lower side at 1, its upper side at 0. */
export function choiceValue(side: number): number {
  return 1 - (side & 1);
}

/** Lags, some of which hang on a choice, followed on the trail and explained by their own edge. */
export class LagEdges {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly weight: Int32Array;
  readonly choice: Int32Array;
  /** Where the edges that leave each side begin: they stand together, those without a choice first. */
  private readonly begin: Int32Array;
  /** Where those that hang on a choice begin. */
  private readonly hanging: Int32Array;
  /** The two edges of each choice's side. */
  private readonly hung: readonly (readonly number[])[];

  constructor(
    private readonly trail: Trail,
    edges: readonly Edge[],
  ) {
    const sides = trail.bound.length;
    // Each lag twice: the other is the same seen from the other ends, −x_from ≥ −x_to + weight.
    const isFree = new Int32Array(sides);
    const begin = new Int32Array(sides + 1);
    for (const { from, to, choice } of edges) {
      for (const side of [from, to ^ 1]) {
        begin[side + 1]!++;
        if (choice < 0) isFree[side]!++;
      }
    }
    for (let side = 0; side < sides; side++) begin[side + 1]! += begin[side]!;
    const hanging = isFree.map((count, side) => begin[side]! + count);
    const count = 2 * edges.length;
    [this.from, this.to, this.weight, this.choice] = [0, 0, 0, 0].map(() => new Int32Array(count)) as [
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
    ];
    const next = begin.slice();
    const nextHanging = hanging.slice();
    const hung: number[][] = Array.from({ length: sides }, () => []);
    for (const { from, to, weight, choice } of edges) {
      for (let turned = 0; turned < 2; turned++) {
        const a = turned === 0 ? from : to ^ 1;
        const e = choice < 0 ? next[a]!++ : nextHanging[a]!++;
        this.from[e] = a;
        this.to[e] = turned === 0 ? to : from ^ 1;
        this.weight[e] = weight;
        this.choice[e] = choice;
        if (choice >= 0) hung[choice]!.push(e);
      }
    }
    this.begin = begin;
    this.hanging = hanging;
    this.hung = hung;
  }

  /** Follows the rise of one side. @returns false, with the conflict set, when two bounds cross */
  propagate(side: number): boolean {
    const { trail, to, weight, choice } = this;
    const { bound } = trail;
    const reached = bound[side]!;
    const middle = this.hanging[side]!;
    for (let e = this.begin[side]!; e < middle; e++) {
      const at = reached + weight[e]!;
      const target = to[e]!;
      if (at > bound[target]! && !trail.raise(target, at, Kind.edge, e)) return false;
    }
    const end = this.begin[side + 1]!;
    for (let e = middle; e < end; e++) {
      const target = to[e]!;
      const at = reached + weight[e]!;
      if (at <= bound[target]!) continue;
      const hangs = choice[e]!;
      if (bound[hangs]! >= choiceValue(hangs)) {
        if (!trail.raise(target, at, Kind.edge, e)) return false;
      } else if (at + bound[target ^ 1]! > 0 && !this.refuse(e)) return false;
    }
    // At the start every side is followed once, and no choice is made.
    if (reached < choiceValue(side)) return true;
    for (const e of this.hung[side]!) {
      const at = bound[this.from[e]!]! + weight[e]!;
      if (!trail.raise(to[e]!, at, Kind.edge, e)) return false;
    }
    return true;
  }

  /** The lag would make two bounds cross, so its choice cannot hold. */
  private refuse(e: number): boolean {
    const { trail } = this;
    const { bound } = trail;
    const choice = this.choice[e]!;
    if (bound[choice ^ 1]! >= 1 - choiceValue(choice)) return true;
    const place = trail.beginNote();
    const far = this.to[e]! ^ 1;
    trail.note(place, far, bound[far]!);
    trail.note(place, this.from[e]!, 1 - bound[far]! - this.weight[e]!);
    return trail.raise(choice ^ 1, 1 - choiceValue(choice), Kind.note, place);
  }
}
