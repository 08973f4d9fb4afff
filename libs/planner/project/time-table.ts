import type { Propagator } from '../learning/propagator.js';
import { Kind, type Trail } from '../learning/trail.js';
import type { Project } from './project.js';

const LOWER = 1;
const UPPER = 2;

/**
 * Time-table propagation of all resources: what activities surely use, at each moment, leaves no room for others.
 * Explained at one moment each (Schutt, Feydy, Stuckey and Wallace, "Explaining the cumulative propagator",
 * Constraints 16, 2011).
 *
 * Activity i is variable i of the trail, with sides 2i and 2i + 1.
 */
export class TimeTable implements Propagator {
  private readonly count: number;
  private readonly resources: number;
  /** Amount in sure use, by resource and moment. */
  private readonly used: Int32Array;
  /** The sure part of each activity, as counted in `used`; empty when the end is not after the start. */
  private readonly sureFrom: Int32Array;
  private readonly sureTo: Int32Array;
  private readonly dur: Int32Array;
  private readonly need: Int32Array;
  private readonly cap: Int32Array;
  private readonly users: Int32Array[];
  /** The resources of each activity. */
  private readonly uses: Int32Array[];
  private readonly changed: number[] = [];
  /** Which bounds of each activity moved. */
  private readonly isChanged: Uint8Array;
  /** For each resource, the moments since the last propagation at which use grew. */
  private readonly grownFrom: Int32Array;
  private readonly grownTo: Int32Array;

  /** @param horizon no activity ends after this */
  constructor(
    private readonly trail: Trail,
    { dur, cap, req }: Project,
    private readonly horizon: number,
  ) {
    this.count = dur.length;
    this.resources = cap.length;
    this.used = new Int32Array(this.resources * horizon);
    this.sureFrom = new Int32Array(this.count);
    this.sureTo = new Int32Array(this.count);
    this.dur = Int32Array.from(dur);
    this.need = Int32Array.from(req.flat());
    this.cap = Int32Array.from(cap);
    this.isChanged = new Uint8Array(this.count);
    this.users = cap.map((_, r) => Int32Array.from(dur.keys()).filter((i) => dur[i]! > 0 && req[i]![r]! > 0));
    this.uses = dur.map((d, i) => Int32Array.from(cap.keys()).filter((r) => d > 0 && req[i]![r]! > 0));
    this.grownFrom = new Int32Array(this.resources).fill(horizon);
    this.grownTo = new Int32Array(this.resources);
    for (let side = 0; side < 2 * this.count; side++) this.touch(side);
  }

  /** To be told of every side that rises or falls. */
  touch(side: number): void {
    const i = side >> 1;
    if (i >= this.count) return;
    if (this.isChanged[i] === 0) this.changed.push(i);
    this.isChanged[i]! |= side & 1 ? UPPER : LOWER;
  }

  /** @returns false, with the conflict set, when a resource is overloaded or two bounds cross */
  propagate(): boolean {
    const { changed, isChanged } = this;
    if (changed.length === 0) return true;
    for (const i of changed) this.syncSurePart(i);
    const sound = this.propagateAll();
    if (!sound) return false;
    for (const i of changed) isChanged[i] = 0;
    changed.length = 0;
    this.grownFrom.fill(this.horizon);
    this.grownTo.fill(0);
    return true;
  }

  /** After a failure: what is left to look at is settled by the backtracking to come. */
  private propagateAll(): boolean {
    for (let r = 0; r < this.resources; r++) {
      if (this.grownFrom[r]! < this.grownTo[r]! && !this.checkOverload(r)) return false;
    }
    let from = this.horizon;
    let to = 0;
    for (let r = 0; r < this.resources; r++) {
      from = Math.min(from, this.grownFrom[r]!);
      to = Math.max(to, this.grownTo[r]!);
    }
    const { bound } = this.trail;
    for (let i = 0; i < this.count; i++) {
      const low = bound[2 * i]!;
      const high = -bound[2 * i + 1]!;
      if (low === high) continue;
      if (this.isChanged[i] === 0 && (low >= to || high + this.dur[i]! <= from)) continue;
      if (!this.push(i)) return false;
    }
    return true;
  }

  /** Away from where resources that it uses are taken. */
  private push(i: number): boolean {
    const { bound } = this.trail;
    const duration = this.dur[i]!;
    const isLower = (this.isChanged[i]! & LOWER) !== 0;
    const isUpper = (this.isChanged[i]! & UPPER) !== 0;
    const uses = this.uses[i]!;
    for (let k = 0; k < uses.length; k++) {
      const r = uses[k]!;
      const from = this.grownFrom[r]!;
      const to = this.grownTo[r]!;
      const low = bound[2 * i]!;
      const high = -bound[2 * i + 1]!;
      if ((isLower || (low < to && low + duration > from)) && !this.pushLater(r, i)) return false;
      if ((isUpper || (high < to && high + duration > from)) && !this.pushEarlier(r, i)) return false;
    }
    return true;
  }

  private syncSurePart(i: number): void {
    const low = this.trail.bound[2 * i]!;
    const high = -this.trail.bound[2 * i + 1]!;
    const wasFrom = this.sureFrom[i]!;
    const wasTo = this.sureTo[i]!;
    let from = high;
    let to = low + this.dur[i]!;
    if (from >= to) {
      if (wasFrom >= wasTo) return;
      from = wasFrom;
      to = wasFrom;
    }
    if (from === wasFrom && to === wasTo) return;
    this.sureFrom[i] = from;
    this.sureTo[i] = to;
    if (from >= wasTo || to <= wasFrom) {
      this.use(i, wasFrom, wasTo, -1);
      this.use(i, from, to, 1);
      return;
    }
    if (from < wasFrom) this.use(i, from, wasFrom, 1);
    else this.use(i, wasFrom, from, -1);
    if (to > wasTo) this.use(i, wasTo, to, 1);
    else this.use(i, to, wasTo, -1);
  }

  private use(i: number, from: number, to: number, sign: 1 | -1): void {
    if (from >= to) return;
    for (let r = 0; r < this.resources; r++) {
      const amount = sign * this.need[i * this.resources + r]!;
      if (amount === 0) continue;
      const row = r * this.horizon;
      for (let t = from; t < to; t++) this.used[row + t]! += amount;
      if (sign < 0) continue;
      if (from < this.grownFrom[r]!) this.grownFrom[r] = from;
      if (to > this.grownTo[r]!) this.grownTo[r] = to;
    }
  }

  private checkOverload(r: number): boolean {
    const row = r * this.horizon;
    const cap = this.cap[r]!;
    const to = this.grownTo[r]!;
    for (let t = this.grownFrom[r]!; t < to; t++) {
      if (this.used[row + t]! <= cap) continue;
      const place = this.trail.beginNote();
      this.explain(place, r, t, cap, -1);
      const { conflict, notes } = this.trail;
      conflict.length = 0;
      this.trail.crossing = -1;
      for (let k = place + 1; k < this.trail.noteSize; k++) conflict.push(notes[k]!);
      return false;
    }
    return true;
  }

  private pushLater(r: number, i: number): boolean {
    const { trail, used } = this;
    const row = r * this.horizon;
    const need = this.need[i * this.resources + r]!;
    const room = this.cap[r]! - need;
    const duration = this.dur[i]!;
    const side = 2 * i;
    for (let t = trail.bound[side]! + duration - 1; t >= trail.bound[side]!; t--) {
      const own = t >= this.sureFrom[i]! && t < this.sureTo[i]! ? need : 0;
      if (used[row + t]! - own <= room) continue;
      const place = trail.beginNote();
      this.explain(place, r, t, room, i);
      trail.note(place, side, t - duration + 1);
      if (!trail.raise(side, t + 1, Kind.note, place)) return false;
      t = Math.min(t + 1 + duration, this.horizon);
    }
    return true;
  }

  private pushEarlier(r: number, i: number): boolean {
    const { trail, used } = this;
    const row = r * this.horizon;
    const need = this.need[i * this.resources + r]!;
    const room = this.cap[r]! - need;
    const duration = this.dur[i]!;
    const side = 2 * i + 1;
    for (let t = -trail.bound[side]!; t < duration - trail.bound[side]!; t++) {
      const own = t >= this.sureFrom[i]! && t < this.sureTo[i]! ? need : 0;
      if (used[row + t]! - own <= room) continue;
      const place = trail.beginNote();
      this.explain(place, r, t, room, i);
      trail.note(place, side, -t);
      if (!trail.raise(side, duration - t, Kind.note, place)) return false;
      t = Math.max(t - duration - 1, -1);
    }
    return true;
  }

  /** Notes why more than `room` is in use at `t` without `except`: as few activities as it takes, early facts first. */
  private explain(place: number, r: number, t: number, room: number, except: number): void {
    const { trail, sureFrom, sureTo } = this;
    const users = this.users[r]!;
    const present: number[] = [];
    let spare = -room - 1;
    for (let k = 0; k < users.length; k++) {
      const i = users[k]!;
      if (i === except || sureFrom[i]! > t || sureTo[i]! <= t) continue;
      present.push(i);
      spare += this.need[i * this.resources + r]!;
    }
    for (const i of present) {
      const amount = this.need[i * this.resources + r]!;
      if (amount <= spare) {
        spare -= amount;
        continue;
      }
      trail.note(place, 2 * i, t - this.dur[i]! + 1);
      trail.note(place, 2 * i + 1, -t);
    }
  }
}
