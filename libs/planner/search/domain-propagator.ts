import type { Propagator } from '../learning/propagator.js';
import { Kind, type Trail } from '../learning/trail.js';

/** The values that a variable may take: sorted, disjoint, closed intervals `[from[k], to[k]]` of whole numbers. */
export interface Ranges {
  readonly variable: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** Hours: a bound that falls into a gap moves on to its far side. The bounds at the root must lie in the ranges. */
export class DomainPropagator implements Propagator {
  private readonly ranges: (Ranges | undefined)[];
  private readonly isTouched: Uint8Array;
  private readonly touched: number[] = [];

  constructor(
    private readonly trail: Trail,
    ranges: readonly Ranges[],
  ) {
    this.ranges = Array.from({ length: trail.bound.length >> 1 });
    this.isTouched = new Uint8Array(trail.bound.length);
    for (const each of ranges) {
      this.ranges[each.variable] = each;
      this.touch(2 * each.variable);
      this.touch(2 * each.variable + 1);
    }
  }

  touch(side: number): void {
    if (this.isTouched[side] === 1 || this.ranges[side >> 1] === undefined) return;
    this.isTouched[side] = 1;
    this.touched.push(side);
  }

  propagate(): boolean {
    const { touched, isTouched } = this;
    while (touched.length > 0) {
      const side = touched.pop()!;
      isTouched[side] = 0;
      const ranges = this.ranges[side >> 1]!;
      if (!((side & 1) === 0 ? this.leapUp(side, ranges) : this.leapDown(side, ranges))) return false;
    }
    return true;
  }

  private leapUp(side: number, { from, to }: Ranges): boolean {
    const low = this.trail.bound[side]!;
    const k = firstAtLeast(to, low);
    return from[k]! <= low || this.leap(side, to[k - 1]! + 1, from[k]!);
  }

  private leapDown(side: number, { from, to }: Ranges): boolean {
    const high = -this.trail.bound[side]!;
    const k = firstAtLeast(to, high);
    return from[k]! <= high || this.leap(side, 1 - from[k]!, -to[k - 1]!);
  }

  /** From `least` on, the side is at least `value`. */
  private leap(side: number, least: number, value: number): boolean {
    const { trail } = this;
    const place = trail.beginNote();
    trail.note(place, side, least);
    return trail.raise(side, value, Kind.note, place);
  }
}

/** The first place at which the sorted values are at least `value`. */
function firstAtLeast(sorted: Int32Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
