import type { Random } from '#units';
import { NO_PATH, tightestLags, type Distances } from './longest-paths.js';
import type { Project } from './project.js';

/** Share of the neighbours in a list that are swapped. */
const SHAKEN = 0.05;

/**
 * Whether no activity need start before others have ended, within some time of them or at the same moment: precedence,
 * nothing else.
 */
export function isPlain({ dur }: Project, { count, at }: Distances): boolean {
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const w = at[i * count + j]!;
      if (i === j || w === NO_PATH) continue;
      // Two that take no time may each have to come before the other: no list has them in order.
      if (w < dur[i]! || at[j * count + i]! >= 0) return false;
    }
  }
  return true;
}

/**
 * Schedules of a plain project from lists: one activity after the other starts as early (or, from the end, as late) as
 * those placed before let it (Kolisch, EJOR 90, 1996).
 */
export class ListSchedules {
  readonly count: number;
  /** For each activity, pairs of one that comes before it and the lag from there. */
  readonly before: readonly number[][];
  private readonly after: readonly number[][];
  /** Units in use, by moment and resource. */
  private readonly used: Int32Array;
  private readonly bucket: Int32Array;
  /** An order in which all lags point forward. */
  private readonly inOrder: Int32Array;
  /** How long it takes at least from the start of each to the end of all. */
  private readonly tail: Int32Array;
  private readonly resources: number;
  private readonly dur: Int32Array;
  private readonly cap: Int32Array;
  /** For each activity, pairs of a resource and its units. */
  private readonly needs: readonly Int32Array[];

  /** @param horizon however they are placed, the activities end by then */
  constructor({ dur, cap, req }: Project, distances: Distances, horizon: number) {
    this.count = dur.length;
    this.resources = cap.length;
    this.used = new Int32Array(horizon * cap.length);
    this.bucket = new Int32Array(horizon + 2);
    this.dur = Int32Array.from(dur);
    this.cap = Int32Array.from(cap);
    this.needs = req.map((units, i) =>
      Int32Array.from(dur[i] === 0 ? [] : units.flatMap((u, r) => (u > 0 ? [r, u] : []))),
    );
    const { count, at } = distances;
    this.tail = Int32Array.from(dur, (_, i) => at[i * count + count - 1]!);
    const followers = dur.map((_, i) => at.subarray(i * count, (i + 1) * count).filter((w) => w >= 0).length);
    this.inOrder = Int32Array.from([...dur.keys()].sort((i, j) => followers[j]! - followers[i]! || i - j));
    const before: number[][] = dur.map(() => []);
    const after: number[][] = dur.map(() => []);
    for (const [i, j, w] of tightestLags(distances)) {
      before[j]!.push(i, w);
      after[i]!.push(j, w);
    }
    this.before = before;
    this.after = after;
  }

  /** Starts the activities of a list, each after its predecessors. @returns when the last ends */
  early(list: Int32Array, starts: Int32Array): number {
    const { before, dur } = this;
    this.used.fill(0);
    for (const i of list) {
      const lags = before[i]!;
      let at = 0;
      for (let k = 0; k < lags.length; k += 2) at = Math.max(at, starts[lags[k]!]! + lags[k + 1]!);
      for (let t = at + dur[i]! - 1; t >= at; t--) {
        if (this.hasRoom(i, t)) continue;
        at = t + 1;
        t = at + dur[i]!;
      }
      this.place(i, at, starts);
    }
    return starts[this.count - 1]!;
  }

  /**
   * Pushes all to the end, what ends last first, and back to the beginning (Tormos and Lova, Annals of Operations
   * Research 102, 2001). Never longer than before. @param list becomes the order of the starts
   */
  toAndFro(starts: Int32Array, list: Int32Array): number {
    const { dur, after, inOrder, count } = this;
    const end = starts[count - 1]!;
    this.sort(inOrder, list, end, (i) => starts[i]! + dur[i]!);
    this.used.fill(0);
    for (let p = count - 1; p >= 0; p--) {
      const i = list[p]!;
      const lags = after[i]!;
      let at = end - dur[i]!;
      for (let k = 0; k < lags.length; k += 2) at = Math.min(at, starts[lags[k]!]! - lags[k + 1]!);
      for (let t = at; t < at + dur[i]!; t++) {
        if (this.hasRoom(i, t)) continue;
        at = t - dur[i]!;
        t = at - 1;
      }
      this.place(i, at, starts);
    }
    this.sort(inOrder, list, end, (i) => starts[i]!);
    return this.early(list, starts);
  }

  /** A list by chance, in which those with much after them tend to come early; `pull` from 1 says how strongly. */
  sample(random: Random, pull: number): Int32Array {
    const { before, after, tail, count } = this;
    const open = before.map((lags) => lags.length >> 1);
    const ready = open.flatMap((left, i) => (left === 0 ? [i] : []));
    return Int32Array.from({ length: count }, () => {
      let chosen = Math.floor(random.next() * ready.length);
      for (let k = 1; k < pull && ready.length > 1; k++) {
        const other = Math.floor(random.next() * ready.length);
        if (tail[ready[other]!]! > tail[ready[chosen]!]!) chosen = other;
      }
      const i = ready[chosen]!;
      ready[chosen] = ready.at(-1)!;
      ready.pop();
      for (let k = 0; k < after[i]!.length; k += 2)
        if (--open[after[i]![k]!]! === 0) ready.push(after[i]![k]!);
      return i;
    });
  }

  /** Swaps some neighbours that may come in either order. */
  shake(list: Int32Array, random: Random): Int32Array {
    for (let k = 1; k < list.length; k++) {
      const [a, b] = [list[k - 1]!, list[k]!];
      if (random.next() >= SHAKEN || this.isBefore(a, b)) continue;
      list[k - 1] = b;
      list[k] = a;
    }
    return list;
  }

  private isBefore(a: number, b: number): boolean {
    const lags = this.before[b]!;
    for (let k = 0; k < lags.length; k += 2) if (lags[k] === a) return true;
    return false;
  }

  /** Sorts by a key of 0 to `most`; equals stay as they are in `from`. */
  private sort(from: Int32Array, into: Int32Array, most: number, key: (i: number) => number): void {
    const { bucket } = this;
    bucket.fill(0, 0, most + 2);
    for (const i of from) bucket[key(i) + 1]!++;
    for (let k = 1; k <= most; k++) bucket[k]! += bucket[k - 1]!;
    for (const i of from) into[bucket[key(i)]!++] = i;
  }

  private hasRoom(i: number, t: number): boolean {
    const need = this.needs[i]!;
    const row = t * this.resources;
    for (let k = 0; k < need.length; k += 2) {
      const r = need[k]!;
      if (this.used[row + r]! + need[k + 1]! > this.cap[r]!) return false;
    }
    return true;
  }

  private place(i: number, at: number, starts: Int32Array): void {
    starts[i] = at;
    const need = this.needs[i]!;
    for (let t = at; t < at + this.dur[i]!; t++) {
      for (let k = 0; k < need.length; k += 2) this.used[t * this.resources + need[k]!]! += need[k + 1]!;
    }
  }
}
