import { grown, Kind, type Trail } from './trail.js';

/** Numbers before the literals of a clause: how many literals, and on how many levels they became false. */
const HEAD = 2;

/** Up to this spread a clause is kept for good. */
const NARROW = 2;

/**
 * Learned clauses over bound literals with two watched literals each (Moskewicz et al., "Chaff", DAC 2001). A clause
 * says that one of its literals holds.
 */
export class Clauses {
  /** Clauses one after the other: the head, then pairs of side and value. */
  store = new Int32Array(1 << 12);
  private size = 0;
  private readonly activity = new Map<number, number>();
  private increment = 1;
  /** By the side whose rise can make the watched literal false: pairs of the bound at which it does, and the clause. */
  private readonly watches: number[][];

  constructor(private readonly trail: Trail) {
    this.watches = Array.from({ length: trail.bound.length }, () => []);
  }

  get count(): number {
    return this.activity.size;
  }

  /** Where the pairs of a clause begin in `store`. */
  begin(place: number): number {
    return place + HEAD;
  }

  end(place: number): number {
    return place + HEAD + 2 * this.store[place]!;
  }

  /**
   * @param literals pairs; at least two, of which the first is about to be made true and the second became false last
   * @param spread on how many levels the literals became false
   */
  add(literals: ArrayLike<number>, spread: number, activity = this.increment): number {
    while (this.size + HEAD + literals.length > this.store.length) this.store = grown(this.store);
    const place = this.size;
    this.store[place] = literals.length >> 1;
    this.store[place + 1] = spread;
    this.store.set(literals, place + HEAD);
    this.size += HEAD + literals.length;
    this.activity.set(place, activity);
    this.watch(place + HEAD, place);
    this.watch(place + HEAD + 2, place);
    return place;
  }

  bump(place: number): void {
    this.activity.set(place, (this.activity.get(place) ?? 0) + this.increment);
  }

  decay(): void {
    this.increment *= 1.001;
    if (this.increment < 1e100) return;
    for (const [place, activity] of this.activity) this.activity.set(place, activity * 1e-100);
    this.increment *= 1e-100;
  }

  /** Follows the rise of one side. @returns false, with the conflict set, when a clause has no literal left */
  propagate(side: number): boolean {
    const { trail, store } = this;
    const { bound } = trail;
    const list = this.watches[side]!;
    const reached = bound[side]!;
    const length = list.length;
    let kept = 0;
    for (let k = 0; k < length; k += 2) {
      const at = list[k]!;
      const place = list[k + 1]!;
      if (at <= reached) {
        const first = place + HEAD;
        if ((store[first]! ^ 1) === side && 1 - store[first + 1]! === at) this.swap(first, first + 2);
        const settled = bound[store[first]!]! >= store[first + 1]!;
        if (!settled && this.moveWatch(place)) continue;
        if (!settled && !trail.raise(store[first]!, store[first + 1]!, Kind.clause, place)) {
          for (; k < length; k++) list[kept++] = list[k]!;
          list.length = kept;
          return false;
        }
      }
      list[kept] = at;
      list[kept + 1] = place;
      kept += 2;
    }
    list.length = kept;
    return true;
  }

  /**
   * Forgets clauses that are settled at the root and half of those that spread widely and are little used (after
   * Audemard and Simon, IJCAI 2009). Only at the root, after propagation, where no clause is a reason that matters.
   */
  reduce(): void {
    const { bound } = this.trail;
    const before = this.store.slice(0, this.size);
    const wide = [...this.activity]
      .filter(([place]) => before[place + 1]! > NARROW)
      .sort(([a, x], [b, y]) => x - y || a - b);
    const dropped = new Set(wide.slice(0, wide.length >> 1).map(([place]) => place));
    const kept = [...this.activity].filter(([place]) => !dropped.has(place));
    this.size = 0;
    this.activity.clear();
    for (const list of this.watches) list.length = 0;
    for (const [place, activity] of kept) {
      const free: number[] = [];
      let settled = false;
      for (let k = place + HEAD; k < place + HEAD + 2 * before[place]!; k += 2) {
        const [side, value] = [before[k]!, before[k + 1]!];
        if (bound[side]! >= value) settled = true;
        if (bound[side ^ 1]! < 1 - value) free.push(side, value);
      }
      if (!settled) this.add(free, before[place + 1]!, activity);
    }
  }

  /** Puts a literal that is not false in the second place. @returns false when there is none */
  private moveWatch(place: number): boolean {
    const { store } = this;
    const { bound } = this.trail;
    const second = place + HEAD + 2;
    const end = this.end(place);
    for (let k = second + 2; k < end; k += 2) {
      if (bound[store[k]! ^ 1]! >= 1 - store[k + 1]!) continue;
      this.swap(second, k);
      this.watch(second, place);
      return true;
    }
    return false;
  }

  private swap(a: number, b: number): void {
    const { store } = this;
    const side = store[a]!;
    const value = store[a + 1]!;
    store[a] = store[b]!;
    store[a + 1] = store[b + 1]!;
    store[b] = side;
    store[b + 1] = value;
  }

  private watch(k: number, place: number): void {
    this.watches[this.store[k]! ^ 1]!.push(1 - this.store[k + 1]!, place);
  }
}
