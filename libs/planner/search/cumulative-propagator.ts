import type { Propagator } from '../learning/propagator.js';
import { Kind, type Trail } from '../learning/trail.js';
import type { Load, ResourceLoads } from '../loads.js';
import { UseProfile } from './use-profile.js';

const LOWER = 1;
const UPPER = 2;

/** A load as the propagator keeps it. */
interface Part extends Load {
  readonly resource: Shared;
  /** Of the node `last`. */
  readonly duration: number;
  /** When it is surely there, as counted in the profile; empty where the end is not after the start. */
  sureFrom: number;
  sureTo: number;
}

/** One resource that several loads can share. */
interface Shared {
  readonly capacity: number;
  readonly parts: readonly Part[];
  readonly profile: UseProfile;
  isChanged: boolean;
  /** The stretch since the last propagation in which use grew. */
  grownFrom: number;
  grownTo: number;
}

/**
 * Time-table propagation of all resources that loads can share: what is surely in use leaves no room for others.
 * Explained at one moment each (Schutt, Feydy, Stuckey and Wallace, "Explaining the cumulative propagator",
 * Constraints 16, 2011). A load may end with another stage than it began with, so that its length is not known. The
 * profile is kept by moments at which use changes, since time is long; only what changed is looked at again.
 */
export class CumulativePropagator implements Propagator {
  private readonly resources: readonly Shared[];
  /** The parts that begin or end with each variable. */
  private readonly partsOf: readonly (readonly Part[])[];
  private readonly changed: number[] = [];
  /** Which bounds of each variable moved. */
  private readonly isChanged: Uint8Array;

  /** @param duration of the node that is each variable */
  constructor(
    private readonly trail: Trail,
    resources: readonly ResourceLoads[],
    duration: Float64Array,
  ) {
    const partsOf: Part[][] = Array.from({ length: trail.bound.length >> 1 }, () => []);
    this.resources = resources.map(({ capacity, loads }) => {
      const parts: Part[] = [];
      const profile = new UseProfile(parts);
      const resource: Shared = {
        ...{ capacity, parts, profile, isChanged: false, grownFrom: Infinity, grownTo: -Infinity },
      };
      for (const load of loads) {
        const part = { ...load, resource, duration: duration[load.last]!, sureFrom: 0, sureTo: 0 };
        parts.push(part);
        partsOf[load.first]!.push(part);
        if (load.last !== load.first) partsOf[load.last]!.push(part);
      }
      return resource;
    });
    this.partsOf = partsOf;
    this.isChanged = new Uint8Array(partsOf.length);
    for (let side = 0; side < trail.bound.length; side++) this.touch(side);
  }

  touch(side: number): void {
    const x = side >> 1;
    if (this.partsOf[x]!.length === 0) return;
    if (this.isChanged[x] === 0) this.changed.push(x);
    this.isChanged[x]! |= side & 1 ? UPPER : LOWER;
  }

  /** @returns false, with the conflict set, when a resource is overloaded or two bounds cross */
  propagate(): boolean {
    const { changed, isChanged } = this;
    if (changed.length === 0) return true;
    for (let k = 0; k < changed.length; k++) {
      const parts = this.partsOf[changed[k]!]!;
      for (let q = 0; q < parts.length; q++) this.sync(parts[q]!);
    }
    // After a failure what is left to look at is settled by the backtracking to come.
    for (const resource of this.resources) if (!this.propagateOn(resource)) return false;
    for (let k = 0; k < changed.length; k++) isChanged[changed[k]!] = 0;
    changed.length = 0;
    for (const resource of this.resources) {
      resource.grownFrom = Infinity;
      resource.grownTo = -Infinity;
    }
    return true;
  }

  private sync(part: Part): void {
    const { bound } = this.trail;
    let from = -bound[2 * part.first + 1]!;
    let to = bound[2 * part.last]! + part.duration;
    if (from >= to) from = to = 0;
    const { sureFrom, sureTo, resource } = part;
    if (from === sureFrom && to === sureTo) return;
    resource.isChanged = true;
    part.sureFrom = from;
    part.sureTo = to;
    if (from === to) return;
    if (sureFrom === sureTo) this.grow(resource, from, to);
    else {
      if (from < sureFrom) this.grow(resource, from, Math.min(sureFrom, to));
      if (to > sureTo) this.grow(resource, Math.max(sureTo, from), to);
    }
  }

  private grow(resource: Shared, from: number, to: number): void {
    if (from < resource.grownFrom) resource.grownFrom = from;
    if (to > resource.grownTo) resource.grownTo = to;
  }

  private propagateOn(resource: Shared): boolean {
    const { profile, parts, capacity } = resource;
    if (resource.isChanged) {
      profile.rebuild();
      resource.isChanged = false;
    }
    if (profile.peak > capacity && !this.checkOverload(resource)) return false;
    const { bound } = this.trail;
    const { grownFrom, grownTo } = resource;
    for (let k = 0; k < parts.length; k++) {
      const part = parts[k]!;
      const { first, last, amount } = part;
      if (profile.peak + amount <= capacity || part.constant) continue;
      const low = bound[2 * first]!;
      const high = -bound[2 * first + 1]!;
      if (first === last && low === high) continue;
      const lowEnd = bound[2 * last]! + part.duration;
      const highEnd = part.duration - bound[2 * last + 1]!;
      const moved = this.isChanged[first]! | this.isChanged[last]!;
      if (((moved & LOWER) !== 0 || (low < grownTo && lowEnd > grownFrom)) && !this.pushLater(part))
        return false;
      if (((moved & UPPER) !== 0 || (high < grownTo && highEnd > grownFrom)) && !this.pushEarlier(part)) {
        return false;
      }
    }
    return true;
  }

  private checkOverload(resource: Shared): boolean {
    const { profile, parts, capacity } = resource;
    for (let k = 0; k < profile.count; k++) {
      if (profile.use[k]! <= capacity) continue;
      const at = profile.time[k]!;
      const movable = parts.find((part) => !part.constant && part.sureFrom <= at && part.sureTo > at);
      // Loads that cannot move may exceed the capacity among themselves: that is history.
      if (movable === undefined) continue;
      const { trail } = this;
      const place = trail.beginNote();
      this.claim(place, movable, at);
      this.explain(place, resource, at, capacity - movable.amount, movable);
      trail.conflict.length = 0;
      trail.crossing = -1;
      for (let n = place + 1; n < trail.noteSize; n++) trail.conflict.push(trail.notes[n]!);
      return false;
    }
    return true;
  }

  /** Its start, away from where it would surely meet what leaves too little room. */
  private pushLater(part: Part): boolean {
    const { trail } = this;
    const { bound } = trail;
    const { resource, first, last, amount, duration } = part;
    const { profile } = resource;
    const room = resource.capacity - amount;
    let end = bound[2 * last]! + duration;
    let k = profile.lastBefore(end);
    while (k >= 0) {
      const until = k + 1 < profile.count ? profile.time[k + 1]! : Infinity;
      if (until <= bound[2 * first]!) return true;
      const from = profile.time[k]!;
      const own = part.sureFrom <= from && part.sureTo > from ? amount : 0;
      if (profile.use[k]! - own <= room) {
        k--;
        continue;
      }
      const t = Math.min(until, end) - 1;
      const place = trail.beginNote();
      this.explain(place, resource, t, room, part);
      trail.note(place, 2 * last, t + 1 - duration);
      if (!trail.raise(2 * first, t + 1, Kind.note, place)) return false;
      if (first !== last) return true;
      end = t + 1 + duration;
      k = profile.lastBefore(end);
    }
    return true;
  }

  /** Its end, likewise. */
  private pushEarlier(part: Part): boolean {
    const { trail } = this;
    const { bound } = trail;
    const { resource, first, last, amount, duration } = part;
    const { profile } = resource;
    const room = resource.capacity - amount;
    let start = -bound[2 * first + 1]!;
    let k = Math.max(profile.lastBefore(start + 1), 0);
    while (k < profile.count) {
      const from = profile.time[k]!;
      if (from >= duration - bound[2 * last + 1]!) return true;
      const until = k + 1 < profile.count ? profile.time[k + 1]! : Infinity;
      const own = part.sureFrom <= from && part.sureTo > from ? amount : 0;
      if (until <= start || profile.use[k]! - own <= room) {
        k++;
        continue;
      }
      const t = Math.max(from, start);
      const place = trail.beginNote();
      this.explain(place, resource, t, room, part);
      trail.note(place, 2 * first + 1, -t);
      if (!trail.raise(2 * last + 1, duration - t, Kind.note, place)) return false;
      if (first !== last) return true;
      start = t - duration;
      k = Math.max(profile.lastBefore(start + 1), 0);
    }
    return true;
  }

  /** Notes why more than `room` is in use at `t` without `except`: as few loads as it takes, early ones first; what cannot move needs no reason. */
  private explain(place: number, { parts }: Shared, t: number, room: number, except: Part): void {
    let spare = -room - 1;
    for (let k = 0; k < parts.length; k++) {
      const part = parts[k]!;
      if (part !== except && part.sureFrom <= t && part.sureTo > t) spare += part.amount;
    }
    for (let k = 0; k < parts.length; k++) {
      const part = parts[k]!;
      if (part === except || part.constant || part.sureFrom > t || part.sureTo <= t) continue;
      if (part.amount <= spare) spare -= part.amount;
      else this.claim(place, part, t);
    }
  }

  /** Notes that the load is surely there at `t`. */
  private claim(place: number, { first, last, duration }: Part, t: number): void {
    this.trail.note(place, 2 * last, t + 1 - duration);
    this.trail.note(place, 2 * first + 1, -t);
  }
}
