/**
 * Stages by when they are due, of equal times the one of the lower rank first: a tournament over the ranks, so that a
 * change costs the logarithm of their number.
 */
export class DueStages {
  /** Leaves hold times by rank; every inner place the lesser of the two below. */
  private readonly least: Float64Array;
  private readonly initial: Float64Array;
  private readonly size: number;
  private readonly byRank: Int32Array;

  /**
   * @param rank a different place of each stage in the order of all, from 0
   * @param starts when each is due at first; further entries are left out
   */
  constructor(
    private readonly rank: Int32Array,
    starts: Float64Array,
  ) {
    let size = 1;
    while (size < rank.length) size *= 2;
    this.size = size;
    this.byRank = new Int32Array(rank.length);
    this.initial = new Float64Array(2 * size).fill(Infinity);
    rank.forEach((place, stage) => {
      this.byRank[place] = stage;
      this.initial[size + place] = starts[stage]!;
    });
    for (let k = size - 1; k >= 1; k--) {
      this.initial[k] = Math.min(this.initial[2 * k]!, this.initial[2 * k + 1]!);
    }
    this.least = this.initial.slice();
  }

  /** All as they were at first. */
  reset(): void {
    this.least.set(this.initial);
  }

  move(stage: number, at: number): void {
    const { least } = this;
    let k = this.size + this.rank[stage]!;
    least[k] = at;
    for (k >>= 1; k >= 1; k >>= 1) least[k] = Math.min(least[2 * k]!, least[2 * k + 1]!);
  }

  remove(stage: number): void {
    this.move(stage, Infinity);
  }

  /** When the first is due; infinite where none is left. */
  firstAt(): number {
    return this.least[1]!;
  }

  /** The stage that is due first, or −1. */
  first(): number {
    const { least, size } = this;
    if (least[1] === Infinity) return -1;
    let k = 1;
    while (k < size) k = least[2 * k]! <= least[2 * k + 1]! ? 2 * k : 2 * k + 1;
    return this.byRank[k - size]!;
  }
}
