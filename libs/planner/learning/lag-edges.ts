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
  readonly from: number[] = [];
  readonly to: number[] = [];
  readonly weight: number[] = [];
  readonly choice: number[] = [];
  private readonly out: Int32Array[];
  /** The two edges of each choice's side. */
  private readonly hung: number[][];

  constructor(
    private readonly trail: Trail,
    edges: readonly Edge[],
  ) {
    const out: number[][] = Array.from({ length: trail.bound.length }, () => []);
    this.hung = Array.from({ length: trail.bound.length }, () => []);
    for (const { from, to, weight, choice } of edges) {
      // The same lag seen from the other ends: −x_from ≥ −x_to + weight.
      for (const [a, b] of [
        [from, to],
        [to ^ 1, from ^ 1],
      ] as const) {
        const e = this.from.length;
        this.from.push(a);
        this.to.push(b);
        this.weight.push(weight);
        this.choice.push(choice);
        out[a]!.push(e);
        if (choice >= 0) this.hung[choice]!.push(e);
      }
    }
    this.out = out.map((list) => Int32Array.from(list));
  }

  /** Follows the rise of one side. @returns false, with the conflict set, when two bounds cross */
  propagate(side: number): boolean {
    const { trail, to, weight, choice } = this;
    const { bound } = trail;
    const reached = bound[side]!;
    const out = this.out[side]!;
    for (let k = 0; k < out.length; k++) {
      const e = out[k]!;
      const target = to[e]!;
      const at = reached + weight[e]!;
      if (at <= bound[target]!) continue;
      const hangs = choice[e]!;
      if (hangs < 0 || bound[hangs]! >= choiceValue(hangs)) {
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
