import { firstOverload, type ResourceLoads } from './loads.js';

/** Loads of one resource with their times side by side, since they are asked for over and over. */
interface Shelf extends ResourceLoads {
  readonly amount: Float64Array;
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/** Whether there is room for stages that move one at a time, among all others. */
export class Room {
  private readonly shelves: readonly Shelf[];
  /** By node: the loads that begin or end with it, as places on their shelves. */
  private readonly of: readonly (readonly (readonly [shelf: number, load: number])[])[];

  /** @param x starts of all nodes; may be changed, one node at a time, if `move` is told */
  constructor(
    all: readonly ResourceLoads[],
    private readonly x: Float64Array,
    private readonly duration: Float64Array,
  ) {
    const of = Array.from(x, (): (readonly [number, number])[] => []);
    this.shelves = all.map((each, s): Shelf => {
      each.loads.forEach(({ first, last }, k) => {
        of[first]!.push([s, k]);
        if (last !== first) of[last]!.push([s, k]);
      });
      return {
        ...each,
        amount: Float64Array.from(each.loads, ({ amount }) => amount),
        from: Float64Array.from(each.loads, ({ first }) => x[first]!),
        to: Float64Array.from(each.loads, ({ last }) => x[last]! + duration[last]!),
      };
    });
    this.of = of;
  }

  /** Node `i` is now where its start says. */
  move(i: number): void {
    const { x, duration, shelves } = this;
    for (const [s, k] of this.of[i]!) {
      const { loads, from, to } = shelves[s]!;
      const { first, last } = loads[k]!;
      from[k] = x[first]!;
      to[k] = x[last]! + duration[last]!;
    }
  }

  /** Whether a resource is overloaded while loads that begin or end with the node are there. */
  isOverloadedBy(i: number): boolean {
    return this.of[i]!.some(([s, k]) => this.isOverloaded(this.shelves[s]!, k));
  }

  private isOverloaded({ resource, capacity, loads, amount, from, to }: Shelf, mine: number): boolean {
    const begin = from[mine]!;
    const end = to[mine]!;
    const { constant: isConstant } = loads[mine]!;
    const spare = capacity - amount[mine]!;
    let most = 0;
    for (let k = 0; k < from.length; k++) {
      if (from[k]! >= end || to[k]! <= begin) continue;
      most += amount[k]!;
      // Two that are too much together; most resources there is one of only.
      if (k !== mine && amount[k]! > spare && !isConstant && begin < end && from[k]! < to[k]!) return true;
    }
    if (most <= capacity) return false;
    const beside = loads.filter((_, k) => from[k]! < end && to[k]! > begin);
    return firstOverload([{ resource, capacity, loads: beside }], this.x, this.duration) !== undefined;
  }
}
