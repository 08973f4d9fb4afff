import type { Propagator } from '../learning/propagator.js';
import { Kind, type Trail } from '../learning/trail.js';
import type { Load, ResourceLoads } from '../loads.js';
import { UseProfile } from './use-profile.js';

const LOWER = 1;
const UPPER = 2;

/** Later than any time, and a whole number as times are. */
const NEVER = 1 << 30;

/** One resource that several loads can share. */
interface Shared {
  readonly capacity: number;
  /** Its parts are those from here up to the end. */
  readonly begin: number;
  readonly end: number;
  readonly profile: UseProfile;
  /** The most that is surely in use. */
  peak: number;
  isChanged: boolean;
  /** How many parts there are in `moved` for it. */
  moved: number;
  /** The stretch since the last propagation in which use grew. */
  grownFrom: number;
  grownTo: number;
}

/**
 * Time-table propagation of all resources that loads can share: what is surely in use leaves no room for others.
 * Explained at one moment each (Schutt, Feydy, Stuckey and Wallace, "Explaining the cumulative propagator",
 * Constraints 16, 2011). A load may end with another stage than it began with, so that its length is not known. The
 * profile is kept by moments at which use changes, since time is long; only what changed is looked at again.
 *
 * Loads are numbered through as parts, those of one resource next to each other, and kept in flat arrays because the
 * innermost loops live on them.
 */
export class CumulativePropagator implements Propagator {
  private readonly resources: readonly Shared[];
  /** For each part: the variables that it begins and ends with, the duration of the latter, and its units. */
  private readonly first: Int32Array;
  private readonly last: Int32Array;
  private readonly duration: Int32Array;
  private readonly amount: Int32Array;
  private readonly isConstant: Uint8Array;
  private readonly resourceOf: Int32Array;
  /** When each part is surely there, as counted in the profile; empty where the end is not after the start. */
  private readonly sureFrom: Int32Array;
  private readonly sureTo: Int32Array;
  /** The parts that begin or end with each variable. */
  private readonly partsOf: readonly Int32Array[];
  /**
   * The parts of each resource of which a bound moved since the last propagation, from twice its `begin` on: a part of
   * which both ends moved is there twice.
   */
  private readonly moved: Int32Array;
  private readonly changed: Int32Array;
  private changedCount = 0;
  /** Which bounds of each variable moved. */
  private readonly isChanged: Uint8Array;

  /** @param duration of the node that is each variable */
  constructor(
    private readonly trail: Trail,
    resources: readonly ResourceLoads[],
    duration: Float64Array,
  ) {
    const parts = resources.flatMap(({ loads }, r) => loads.map((load) => ({ ...load, r })));
    const count = parts.length;
    this.first = Int32Array.from(parts, ({ first }) => first);
    this.last = Int32Array.from(parts, ({ last }) => last);
    this.duration = Int32Array.from(parts, ({ last }) => duration[last]!);
    this.amount = Int32Array.from(parts, ({ amount }) => amount);
    this.isConstant = Uint8Array.from(parts, ({ constant }) => (constant ? 1 : 0));
    this.resourceOf = Int32Array.from(parts, ({ r }) => r);
    this.sureFrom = new Int32Array(count);
    this.sureTo = new Int32Array(count);
    this.moved = new Int32Array(2 * count);
    let end = 0;
    this.resources = resources.map(({ capacity, loads }): Shared => {
      const begin = end;
      end += loads.length;
      const of = (array: Int32Array): Int32Array => array.subarray(begin, end);
      const profile = new UseProfile(of(this.amount), of(this.sureFrom), of(this.sureTo));
      return {
        ...{ capacity, begin, end, profile, peak: 0, isChanged: false, moved: 0 },
        ...{ grownFrom: NEVER, grownTo: -NEVER },
      };
    });
    this.partsOf = partsByVariable(parts, trail.bound.length >> 1);
    this.isChanged = new Uint8Array(this.partsOf.length);
    this.changed = new Int32Array(this.partsOf.length);
    for (let side = 0; side < trail.bound.length; side++) this.touch(side);
  }

  touch(side: number): void {
    const x = side >> 1;
    if (this.partsOf[x]!.length === 0) return;
    if (this.isChanged[x] === 0) this.changed[this.changedCount++] = x;
    this.isChanged[x]! |= side & 1 ? UPPER : LOWER;
  }

  /** @returns false, with the conflict set, when a resource is overloaded or two bounds cross */
  propagate(): boolean {
    const { changed, isChanged, resources } = this;
    if (this.changedCount === 0) return true;
    for (let r = 0; r < resources.length; r++) resources[r]!.moved = 0;
    for (let k = 0; k < this.changedCount; k++) {
      const parts = this.partsOf[changed[k]!]!;
      for (let q = 0; q < parts.length; q++) {
        const part = parts[q]!;
        const resource = resources[this.resourceOf[part]!]!;
        this.moved[2 * resource.begin + resource.moved++] = part;
        this.sync(part, resource);
      }
    }
    // After a failure what is left to look at is settled by the backtracking to come.
    for (let r = 0; r < resources.length; r++) {
      if (resources[r]!.moved > 0 && !this.propagateOn(resources[r]!)) return false;
    }
    for (let k = 0; k < this.changedCount; k++) isChanged[changed[k]!] = 0;
    this.changedCount = 0;
    for (let r = 0; r < resources.length; r++) {
      resources[r]!.grownFrom = NEVER;
      resources[r]!.grownTo = -NEVER;
    }
    return true;
  }

  private sync(part: number, resource: Shared): void {
    const { bound } = this.trail;
    let from = -bound[2 * this.first[part]! + 1]!;
    let to = bound[2 * this.last[part]!]! + this.duration[part]!;
    if (from >= to) from = to = 0;
    const sureFrom = this.sureFrom[part]!;
    const sureTo = this.sureTo[part]!;
    if (from === sureFrom && to === sureTo) return;
    resource.isChanged = true;
    resource.profile.move(part - resource.begin, from, to);
    if (from === to) return;
    if (sureFrom === sureTo) grow(resource, from, to);
    else {
      if (from < sureFrom) grow(resource, from, Math.min(sureFrom, to));
      if (to > sureTo) grow(resource, Math.max(sureTo, from), to);
    }
  }

  private propagateOn(resource: Shared): boolean {
    const { capacity, grownFrom, grownTo, begin } = resource;
    if (resource.isChanged) {
      resource.peak = resource.profile.peak();
      resource.isChanged = false;
    }
    if (resource.peak > capacity && !this.checkOverload(resource)) return false;
    const { amount, duration, isConstant, isChanged } = this;
    const { bound } = this.trail;
    // Where use did not grow, what did not move still has room.
    const hasGrown = grownFrom < grownTo;
    const count = hasGrown ? resource.end - begin : resource.moved;
    for (let k = 0; k < count; k++) {
      const part = hasGrown ? begin + k : this.moved[2 * begin + k]!;
      if (resource.peak + amount[part]! <= capacity || isConstant[part] === 1) continue;
      const first = this.first[part]!;
      const last = this.last[part]!;
      const low = bound[2 * first]!;
      const high = -bound[2 * first + 1]!;
      if (first === last && low === high) continue;
      const lowEnd = bound[2 * last]! + duration[part]!;
      const highEnd = duration[part]! - bound[2 * last + 1]!;
      const moved = isChanged[first]! | isChanged[last]!;
      if (((moved & LOWER) !== 0 || (low < grownTo && lowEnd > grownFrom)) && !this.pushLater(part, resource))
        return false;
      if (
        ((moved & UPPER) !== 0 || (high < grownTo && highEnd > grownFrom)) &&
        !this.pushEarlier(part, resource)
      )
        return false;
    }
    return true;
  }

  private checkOverload({ profile, begin, end, capacity }: Shared): boolean {
    for (let k = 0; k < profile.count; k++) {
      if (profile.use[k]! <= capacity) continue;
      const at = profile.time[k]!;
      let movable = begin;
      while (movable < end && (this.isConstant[movable] === 1 || !this.isSureAt(movable, at))) movable++;
      // Loads that cannot move may exceed the capacity among themselves: that is history.
      if (movable === end) continue;
      const { trail } = this;
      const place = trail.beginNote();
      this.claim(place, movable, at);
      this.explain(place, begin, end, at, capacity - this.amount[movable]!, movable);
      trail.conflict.length = 0;
      trail.crossing = -1;
      for (let n = place + 1; n < trail.noteSize; n++) trail.conflict.push(trail.notes[n]!);
      return false;
    }
    return true;
  }

  /** Its start, away from where it would surely meet what leaves too little room. */
  private pushLater(part: number, { profile, begin, end: endPart, capacity }: Shared): boolean {
    const { trail } = this;
    const { bound } = trail;
    const { time, use, count } = profile;
    const first = this.first[part]!;
    const last = this.last[part]!;
    const amount = this.amount[part]!;
    const duration = this.duration[part]!;
    const room = capacity - amount;
    let end = bound[2 * last]! + duration;
    let k = profile.lastBefore(end);
    while (k >= 0) {
      const until = k + 1 < count ? time[k + 1]! : NEVER;
      if (until <= bound[2 * first]!) return true;
      if (use[k]! <= room || use[k]! - (this.isSureAt(part, time[k]!) ? amount : 0) <= room) {
        k--;
        continue;
      }
      const t = Math.min(until, end) - 1;
      const place = trail.beginNote();
      this.explain(place, begin, endPart, t, room, part);
      trail.note(place, 2 * last, t + 1 - duration);
      if (!trail.raise(2 * first, t + 1, Kind.note, place)) return false;
      if (first !== last) return true;
      end = t + 1 + duration;
      k = profile.lastBefore(end);
    }
    return true;
  }

  /** Its end, likewise. */
  private pushEarlier(part: number, { profile, begin, end: endPart, capacity }: Shared): boolean {
    const { trail } = this;
    const { bound } = trail;
    const { time, use, count } = profile;
    const first = this.first[part]!;
    const last = this.last[part]!;
    const amount = this.amount[part]!;
    const duration = this.duration[part]!;
    const room = capacity - amount;
    let start = -bound[2 * first + 1]!;
    let k = Math.max(profile.lastBefore(start + 1), 0);
    while (k < count) {
      const from = time[k]!;
      if (from >= duration - bound[2 * last + 1]!) return true;
      const until = k + 1 < count ? time[k + 1]! : NEVER;
      if (until <= start || use[k]! <= room || use[k]! - (this.isSureAt(part, from) ? amount : 0) <= room) {
        k++;
        continue;
      }
      const t = Math.max(from, start);
      const place = trail.beginNote();
      this.explain(place, begin, endPart, t, room, part);
      trail.note(place, 2 * first + 1, -t);
      if (!trail.raise(2 * last + 1, duration - t, Kind.note, place)) return false;
      if (first !== last) return true;
      start = t - duration;
      k = Math.max(profile.lastBefore(start + 1), 0);
    }
    return true;
  }

  /**
   * Notes why more than `room` of a resource is in use at `t` without `except`: as few loads as it takes, early ones
   * first; what cannot move needs no reason. @param begin and `end`: the parts of the resource
   */
  private explain(place: number, begin: number, end: number, t: number, room: number, except: number): void {
    const { amount } = this;
    let spare = -room - 1;
    for (let part = begin; part < end; part++) {
      if (part !== except && this.isSureAt(part, t)) spare += amount[part]!;
    }
    for (let part = begin; part < end; part++) {
      if (!this.isSureAt(part, t) || part === except || this.isConstant[part] === 1) continue;
      if (amount[part]! <= spare) spare -= amount[part]!;
      else this.claim(place, part, t);
    }
  }

  private isSureAt(part: number, t: number): boolean {
    return this.sureFrom[part]! <= t && this.sureTo[part]! > t;
  }

  /** Notes that the load is surely there at `t`. */
  private claim(place: number, part: number, t: number): void {
    this.trail.note(place, 2 * this.last[part]!, t + 1 - this.duration[part]!);
    this.trail.note(place, 2 * this.first[part]! + 1, -t);
  }
}

function grow(resource: Shared, from: number, to: number): void {
  if (from < resource.grownFrom) resource.grownFrom = from;
  if (to > resource.grownTo) resource.grownTo = to;
}

/** The numbers of the parts that begin or end with each variable. */
function partsByVariable(parts: readonly Load[], variables: number): Int32Array[] {
  const numbers: number[][] = Array.from({ length: variables }, () => []);
  parts.forEach(({ first, last }, part) => {
    numbers[first]!.push(part);
    if (last !== first) numbers[last]!.push(part);
  });
  return numbers.map((own) => Int32Array.from(own));
}
