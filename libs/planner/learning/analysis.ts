import type { Clauses } from './clauses.js';
import { choiceValue, type LagEdges } from './lag-edges.js';
import { Kind, type Trail } from './trail.js';

/** How deep a literal's reasons are followed to find it superfluous. */
const DEPTH = 6;

/** What a conflict teaches: a clause as pairs, its first literal to be made true after going back to `level`. */
export interface Lesson {
  readonly literals: readonly number[];
  readonly level: number;
  /** On how many levels the literals became false. */
  readonly spread: number;
}

/**
 * Learns from conflicts: the first unique implication point (Zhang, Madigan, Moskewicz and Malik, ICCAD 2001), over
 * bounds. Of two literals of one side only the stronger is kept: whatever explains it explains the weaker too. And a
 * bound is explained only as far as it is needed.
 */
export class Analysis {
  private readonly needed: Int32Array;
  /** The entry of the needed literal of each side, or −1. */
  private readonly entry: Int32Array;
  private readonly sides: number[] = [];
  private readonly reason: number[] = [];
  private open = 0;
  private levelBegin = 0;
  private rootEnd = 0;

  /** @param onSeen told of every literal that took part */
  constructor(
    private readonly trail: Trail,
    private readonly edges: LagEdges,
    private readonly clauses: Clauses,
    private readonly onSeen: (side: number, value: number) => void,
  ) {
    this.needed = new Int32Array(trail.bound.length);
    this.entry = new Int32Array(trail.bound.length).fill(-1);
  }

  /** @returns null when the conflict holds at the root, that is always */
  learn(): Lesson | null {
    const { trail } = this;
    const { conflict, crossing } = trail;
    if (crossing >= 0) {
      if (crossing < (trail.levelStart[1] ?? Infinity)) return null;
      const other = trail.bound[trail.side[crossing]! ^ 1]!;
      this.explain(crossing, 1 - other, this.reason);
      conflict.push(...this.reason);
    }
    let last = -1;
    for (let k = 0; k < conflict.length; k += 2) {
      last = Math.max(last, trail.entryOf(conflict[k]!, conflict[k + 1]!));
    }
    const level = trail.levelOf(last);
    if (level === 0) return null;
    this.rootEnd = trail.levelStart[1]!;
    this.levelBegin = trail.levelStart[level]!;
    this.open = 0;
    for (let k = 0; k < conflict.length; k += 2) this.need(conflict[k]!, conflict[k + 1]!);
    let at = last;
    for (; ; at--) {
      const side = trail.side[at]!;
      if (this.entry[side] !== at) continue;
      if (this.open === 1) break;
      this.open--;
      this.entry[side] = -1;
      this.explain(at, this.needed[side]!, this.reason);
      const { reason } = this;
      for (let k = 0; k < reason.length; k += 2) this.need(reason[k]!, reason[k + 1]!);
    }
    return this.lesson(trail.side[at]!);
  }

  /** The given literals, as pairs, from which a literal that holds followed. None where it always holds. */
  assumptionsBehind(side: number, value: number): number[] {
    const { trail, entry, needed, reason } = this;
    const found: number[] = [];
    this.rootEnd = trail.levelStart[1] ?? Infinity;
    this.levelBegin = Infinity;
    this.need(side, value);
    for (let at = this.entry[side]!; at >= this.rootEnd; at--) {
      const of = trail.side[at]!;
      if (entry[of] !== at) continue;
      entry[of] = -1;
      if (trail.kind[at] === Kind.given) {
        found.push(of, trail.value[at]!);
        continue;
      }
      this.explain(at, needed[of]!, reason);
      for (let k = 0; k < reason.length; k += 2) this.need(reason[k]!, reason[k + 1]!);
    }
    this.sides.length = 0;
    return found;
  }

  private need(side: number, value: number): void {
    const entry = this.trail.entryOf(side, value);
    if (entry < this.rootEnd) return;
    const before = this.entry[side]!;
    if (before >= 0 && this.needed[side]! >= value) return;
    if (before < this.levelBegin && entry >= this.levelBegin) this.open++;
    if (before < 0) this.sides.push(side);
    this.entry[side] = entry;
    this.needed[side] = value;
    this.onSeen(side, value);
  }

  /** Literals that together imply that the side of the entry is at least `value`, all from before the entry. */
  private explain(entry: number, value: number, into: number[]): void {
    const { trail } = this;
    const ref = trail.ref[entry]!;
    into.length = 0;
    switch (trail.kind[entry]!) {
      case Kind.edge: {
        into.push(this.edges.from[ref]!, value - this.edges.weight[ref]!);
        const choice = this.edges.choice[ref]!;
        if (choice >= 0) into.push(choice, choiceValue(choice));
        break;
      }
      case Kind.clause: {
        const { store } = this.clauses;
        this.clauses.bump(ref);
        // The first literal is the one that was made true.
        for (let k = this.clauses.begin(ref) + 2; k < this.clauses.end(ref); k += 2) {
          into.push(store[k]! ^ 1, 1 - store[k + 1]!);
        }
        break;
      }
      case Kind.note: {
        const { notes } = trail;
        for (let k = ref + 1, left = 2 * notes[ref]!; left > 0; k++, left--) into.push(notes[k]!);
        break;
      }
    }
  }

  private lesson(asserted: number): Lesson {
    const { trail, needed, entry } = this;
    const literals = [asserted ^ 1, 1 - needed[asserted]!];
    const levels = new Set<number>();
    let deepest = 0;
    const kept = this.sides.filter(
      (side) =>
        side !== asserted &&
        entry[side]! >= 0 &&
        !this.follows(entry[side]!, needed[side]!, entry[side]!, DEPTH),
    );
    for (const side of new Set(kept)) {
      const level = trail.levelOf(entry[side]!);
      levels.add(level);
      literals.push(side ^ 1, 1 - needed[side]!);
      if (level <= deepest) continue;
      deepest = level;
      const last = literals.length - 2;
      [literals[2], literals[last]] = [literals[last]!, literals[2]!];
      [literals[3], literals[last + 1]] = [literals[last + 1]!, literals[3]!];
    }
    for (const side of this.sides) entry[side] = -1;
    this.sides.length = 0;
    return { literals, level: deepest, spread: levels.size + 1 };
  }

  /** Whether needed literals from before `limit` imply that the side of `entry` is at least `value`. */
  private follows(entry: number, value: number, limit: number, depth: number): boolean {
    if (depth === 0 || this.trail.kind[entry] === Kind.given) return false;
    const reason: number[] = [];
    this.explain(entry, value, reason);
    for (let k = 0; k < reason.length; k += 2) {
      const side = reason[k]!;
      const least = reason[k + 1]!;
      const cover = this.entry[side]!;
      if (cover >= 0 && cover < limit && this.needed[side]! >= least) continue;
      const before = this.trail.entryOf(side, least);
      if (before < this.rootEnd) continue;
      if (!this.follows(before, least, limit, depth - 1)) return false;
    }
    return true;
  }
}
