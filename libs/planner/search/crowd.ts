import type { Propagator } from '../learning/propagator.js';
import { Kind, type Trail } from '../learning/trail.js';
import type { Load } from '../loads.js';

/** A stretch of time in which so much of the resource is surely in use that loads of a certain size find no room. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

/**
 * A resource that several loads can share: what is surely in use leaves no room for others. Explained at one moment
 * each, as in the time table of projects; but worked out from the loads alone, since time is long here and loads few,
 * and a load ends with another stage than it began with.
 */
export class Crowd implements Propagator {
  private readonly concerns: Uint8Array;
  private isTouched = true;

  /** @param duration of the node that is each variable */
  constructor(
    private readonly trail: Trail,
    private readonly loads: readonly Load[],
    private readonly capacity: number,
    private readonly duration: Float64Array,
  ) {
    this.concerns = new Uint8Array(trail.bound.length >> 1);
    for (const { first, last } of loads) this.concerns[first] = this.concerns[last] = 1;
  }

  touch(side: number): void {
    if (this.concerns[side >> 1] === 1) this.isTouched = true;
  }

  propagate(): boolean {
    if (!this.isTouched) return true;
    this.isTouched = false;
    const stretches = this.stretches();
    for (const { from, amount } of stretches) {
      if (amount <= this.capacity) continue;
      const movable = this.sureAt(from).find((load) => !load.constant);
      // Loads that cannot move may exceed the capacity among themselves: that is history.
      if (movable === undefined) continue;
      const { trail } = this;
      const place = trail.beginNote();
      this.claim(place, movable, from);
      this.explain(place, from, this.capacity - movable.amount, movable);
      trail.conflict.length = 0;
      trail.crossing = -1;
      for (let k = place + 1; k < trail.noteSize; k++) trail.conflict.push(trail.notes[k]!);
      return false;
    }
    for (const load of this.loads) {
      if (!load.constant && !this.push(load, stretches)) return false;
    }
    return true;
  }

  private sureFrom({ first }: Load): number {
    return -this.trail.bound[2 * first + 1]!;
  }

  private sureTo({ last }: Load): number {
    return this.trail.bound[2 * last]! + this.duration[last]!;
  }

  private sureAt(t: number): Load[] {
    return this.loads.filter((load) => this.sureFrom(load) <= t && this.sureTo(load) > t);
  }

  private stretches(): Stretch[] {
    const sure = this.loads.filter((load) => this.sureFrom(load) < this.sureTo(load));
    const ends = sure.flatMap((load) => [this.sureFrom(load), this.sureTo(load)]);
    const moments = [...new Set(ends)].sort((a, b) => a - b);
    return moments.slice(0, -1).map((from, k) => {
      let amount = 0;
      for (const load of sure)
        if (this.sureFrom(load) <= from && this.sureTo(load) > from) amount += load.amount;
      return { from, to: moments[k + 1]!, amount };
    });
  }

  private push(load: Load, stretches: readonly Stretch[]): boolean {
    const { trail, duration } = this;
    const { first, last, amount } = load;
    const room = this.capacity - amount;
    for (const stretch of stretches) {
      const own = this.sureFrom(load) <= stretch.from && this.sureTo(load) > stretch.from;
      if (own || stretch.amount <= room) continue;
      const lastMoment = Math.min(stretch.to, this.sureTo(load)) - 1;
      if (lastMoment >= Math.max(stretch.from, trail.bound[2 * first]!)) {
        const place = trail.beginNote();
        trail.note(place, 2 * last, lastMoment + 1 - duration[last]!);
        this.explain(place, lastMoment, room, load);
        if (!trail.raise(2 * first, lastMoment + 1, Kind.note, place)) return false;
      }
      const firstMoment = Math.max(stretch.from, this.sureFrom(load));
      if (firstMoment < Math.min(stretch.to, duration[last]! - trail.bound[2 * last + 1]!)) {
        const place = trail.beginNote();
        trail.note(place, 2 * first + 1, -firstMoment);
        this.explain(place, firstMoment, room, load);
        if (!trail.raise(2 * last + 1, duration[last]! - firstMoment, Kind.note, place)) return false;
      }
    }
    return true;
  }

  /** Notes why more than `room` is in use at `t` without `except`; what cannot move needs no reason. */
  private explain(place: number, t: number, room: number, except: Load): void {
    const present = this.sureAt(t).filter((load) => load !== except);
    let spare = present.reduce((sum, load) => sum + load.amount, -room - 1);
    for (const load of present) {
      if (load.constant) continue;
      if (load.amount <= spare) spare -= load.amount;
      else this.claim(place, load, t);
    }
  }

  /** Notes that the load is surely there at `t`. */
  private claim(place: number, { first, last }: Load, t: number): void {
    this.trail.note(place, 2 * first + 1, -t);
    this.trail.note(place, 2 * last, t + 1 - this.duration[last]!);
  }
}
