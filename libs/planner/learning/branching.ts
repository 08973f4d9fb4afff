import type { Random } from '#units';
import { choiceValue } from './lag-edges.js';
import type { Trail } from './trail.js';

/** Values of variables lie within this of 0, so that a variable and a value make one key. */
const REACH = 1 << 26;

/**
 * What to decide next: the split [x ≥ v] or [x < v] that took part in most of the latest conflicts (Moskewicz et al.,
 * "Chaff", DAC 2001), in the way of the best schedule so far; where no conflict says anything, the activity that can
 * start first starts as early as it can.
 */
export class Branching {
  /** Values of the best schedule so far. */
  private guide: Int32Array | null = null;
  /** While there is none: the least that each variable could be before the latest restart. */
  private reached: Int32Array | null = null;
  private readonly index = new Map<number, number>();
  private readonly variable: number[] = [];
  private readonly value: number[] = [];
  private readonly activity: number[] = [];
  private increment = 1;
  /** Splits by activity, the largest on top; `place` is where each stands in it, or −1. */
  private readonly heap: number[] = [];
  private readonly place: number[] = [];
  /** Splits that were found decided, by variable: back in the heap once a bound of it falls. */
  private readonly parked: number[][];

  /** @param starts how many of the variables are starts; the others are choices */
  constructor(
    private readonly trail: Trail,
    private readonly starts: number,
    private readonly random: Random,
  ) {
    this.parked = Array.from({ length: trail.bound.length >> 1 }, () => []);
  }

  follow(values: Int32Array): void {
    this.guide = values;
  }

  /**
   * To be told before a restart, so that the search goes on near where it was (Pipatsrisawat and Darwiche, SAT 2007):
   * otherwise it hardly ever finds a first schedule where maximum lags leave little room.
   */
  beforeRestart(): void {
    if (this.guide) return;
    const { bound } = this.trail;
    this.reached ??= new Int32Array(bound.length >> 1);
    for (let x = 0; x < this.reached.length; x++) this.reached[x] = bound[2 * x]!;
  }

  /** A literal took part in a conflict. */
  seen(side: number, value: number): void {
    const x = side >> 1;
    const at = (side & 1) === 0 ? value : 1 - value;
    const key = x * 2 * REACH + at + REACH;
    let split = this.index.get(key);
    if (split === undefined) {
      split = this.variable.length;
      this.index.set(key, split);
      this.variable.push(x);
      this.value.push(at);
      this.activity.push(0);
      this.place.push(-1);
      this.parked[x]!.push(split);
    }
    this.activity[split]! += this.increment;
    if (this.place[split]! >= 0) this.rise(this.place[split]!);
  }

  decay(): void {
    this.increment *= 1 / 0.95;
    if (this.increment < 1e100) return;
    for (let split = 0; split < this.activity.length; split++) this.activity[split]! *= 1e-100;
    this.increment *= 1e-100;
  }

  /** To be told of every side whose bound falls. */
  fell(side: number): void {
    const parked = this.parked[side >> 1]!;
    if (parked.length === 0) return;
    for (const split of parked) {
      this.place[split] = this.heap.length;
      this.heap.push(split);
      this.rise(this.heap.length - 1);
    }
    parked.length = 0;
  }

  /** The literal to make true as a pair, or null when every variable has its value. */
  next(): readonly [side: number, value: number] | null {
    return this.nextByConflicts() ?? this.nextInTime();
  }

  private nextByConflicts(): readonly [number, number] | null {
    const { bound } = this.trail;
    while (this.heap.length > 0) {
      const split = this.heap[0]!;
      const x = this.variable[split]!;
      const v = this.value[split]!;
      if (v > bound[2 * x]! && v <= -bound[2 * x + 1]!) return this.way(x, v);
      this.drop();
      this.parked[x]!.push(split);
    }
    return null;
  }

  private way(x: number, v: number): readonly [number, number] {
    const guide = this.guide ?? this.reached;
    const up = guide ? guide[x]! >= v : x >= this.starts && this.random.next() < 0.5;
    return up ? [2 * x, v] : [2 * x + 1, 1 - v];
  }

  private nextInTime(): readonly [number, number] | null {
    const { bound } = this.trail;
    let first = -1;
    for (let x = 0; x < this.starts; x++) {
      const low = bound[2 * x]!;
      if (low === -bound[2 * x + 1]!) continue;
      if (first < 0 || low < bound[2 * first]!) first = x;
      else if (low === bound[2 * first]! && bound[2 * x + 1]! > bound[2 * first + 1]!) first = x;
    }
    if (first >= 0) return [2 * first + 1, -bound[2 * first]!];
    for (let side = 2 * this.starts; side < bound.length; side += 2) {
      if (bound[side]! + bound[side + 1]! < 0) return [side, choiceValue(side)];
    }
    return null;
  }

  private rise(at: number): void {
    const { heap, activity, place } = this;
    const split = heap[at]!;
    const weight = activity[split]!;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (activity[heap[above]!]! >= weight) break;
      heap[at] = heap[above]!;
      place[heap[at]!] = at;
      at = above;
    }
    heap[at] = split;
    place[split] = at;
  }

  /** Takes the top away. */
  private drop(): void {
    const { heap, activity, place } = this;
    place[heap[0]!] = -1;
    const split = heap.pop()!;
    if (heap.length === 0) return;
    const weight = activity[split]!;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= heap.length) break;
      if (below + 1 < heap.length && activity[heap[below + 1]!]! > activity[heap[below]!]!) below++;
      if (activity[heap[below]!]! <= weight) break;
      heap[at] = heap[below]!;
      place[heap[at]!] = at;
      at = below;
    }
    heap[at] = split;
    place[split] = at;
  }
}
