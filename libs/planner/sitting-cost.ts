import type { Problem } from './problem.js';
import { GAP_MIN, hoursOpenedAt } from './sittings.js';

/** What a sitting more costs, in minutes at the bench: more than can be spent there. */
const SITTING = 1e6;

/** How many sittings there are, then the minutes in them, kept up to date as stages move. Grouped as by `sittings`. */
export class SittingCost {
  /** The stages in hours, by start and then by number. */
  private readonly order: number[];

  /** @param x starts by stage number; may be changed, one stage at a time, if `move` is told */
  constructor(
    private readonly p: Problem,
    private readonly x: Float64Array,
  ) {
    this.order = [...p.stages.keys()]
      .filter((i) => p.stages[i]!.calendar !== undefined)
      .sort((a, b) => x[a]! - x[b]! || a - b);
  }

  /** Stage `i` has moved to where it is now. @param before where it was */
  move(i: number, before: number): void {
    const { order, x } = this;
    let k = this.positionOf(i, before);
    const isBefore = (a: number, b: number): boolean => x[a]! < x[b]! || (x[a] === x[b] && a < b);
    for (; k > 0 && isBefore(i, order[k - 1]!); k--) order[k] = order[k - 1]!;
    for (; k + 1 < order.length && isBefore(order[k + 1]!, i); k++) order[k] = order[k + 1]!;
    order[k] = i;
  }

  cost(): number {
    const { p, x, order } = this;
    let count = 0;
    let minutes = 0;
    let start = -Infinity;
    let end = -Infinity;
    for (const i of order) {
      const stage = p.stages[i]!;
      const at = x[i]!;
      const isSame = at - end <= GAP_MIN && hoursOpenedAt(p, stage, at) <= start;
      if (isSame) {
        minutes -= end;
        end = Math.max(end, at + stage.duration);
        minutes += end;
        continue;
      }
      count++;
      start = at;
      end = at + stage.duration;
      minutes += end - start;
    }
    return count * SITTING + minutes;
  }

  private positionOf(i: number, before: number): number {
    const { order, x } = this;
    let low = 0;
    let high = order.length;
    // Only `i` may be out of place.
    while (low < high) {
      const middle = (low + high) >> 1;
      const j = order[middle]!;
      if (j === i) return middle;
      if (x[j]! < before || (x[j] === before && j < i)) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
