import type { Propagator } from '../learning/propagator.js';
import { Kind, type Trail } from '../learning/trail.js';

/** A variable that is at least the sum of others. */
export class SumPropagator implements Propagator {
  private readonly isTerm: Uint8Array;
  private isTouched = true;

  /** @param terms different variables */
  constructor(
    private readonly trail: Trail,
    private readonly total: number,
    private readonly terms: readonly number[],
  ) {
    this.isTerm = new Uint8Array(trail.bound.length);
    for (const x of terms) this.isTerm[2 * x] = 1;
    this.isTerm[2 * total + 1] = 1;
  }

  touch(side: number): void {
    if (this.isTerm[side] === 1) this.isTouched = true;
  }

  propagate(): boolean {
    if (!this.isTouched) return true;
    this.isTouched = false;
    const { trail, total, terms } = this;
    const { bound } = trail;
    let least = 0;
    for (const x of terms) least += bound[2 * x]!;
    if (least > bound[2 * total]!) {
      const place = trail.beginNote();
      for (const x of terms) trail.note(place, 2 * x, bound[2 * x]!);
      if (!trail.raise(2 * total, least, Kind.note, place)) return false;
    }
    const spare = -bound[2 * total + 1]! - least;
    for (const x of terms) {
      if (-bound[2 * x + 1]! - bound[2 * x]! <= spare) continue;
      const place = trail.beginNote();
      trail.note(place, 2 * total + 1, bound[2 * total + 1]!);
      for (const other of terms) if (other !== x) trail.note(place, 2 * other, bound[2 * other]!);
      if (!trail.raise(2 * x + 1, -bound[2 * x]! - spare, Kind.note, place)) return false;
    }
    return true;
  }
}
