/** How much of a resource is in use, as a step function of time to which loads are added one by one. */
export class StepProfile {
  /** From `time[k]` to `time[k + 1]` there is `use[k]` in use; before the first and from the last on, nothing. */
  private time = new Float64Array(16);
  private use = new Float64Array(16);
  private count = 0;

  /** Becomes the same as another. */
  copy({ time, use, count }: StepProfile): void {
    while (this.time.length < count) this.grow();
    this.time.set(time.subarray(0, count));
    this.use.set(use.subarray(0, count));
    this.count = count;
  }

  /** @param amount below 0 to take back what was added; no effect where `from` is not before `to` */
  add(from: number, to: number, amount: number): void {
    if (from >= to) return;
    const first = this.stepAt(from);
    const end = this.stepAt(to);
    for (let k = first; k < end; k++) this.use[k]! += amount;
  }

  /** The first moment from `at` on from which for so long never more than `most` is in use. */
  firstFit(at: number, length: number, most: number): number {
    const { time, use, count } = this;
    if (length <= 0) return at;
    let start = at;
    for (let k = Math.max(this.before(at + 1), 0); k < count && time[k]! < start + length; k++) {
      if (use[k]! > most) start = k + 1 < count ? time[k + 1]! : Infinity;
    }
    return start;
  }

  /** The end of the last step in [from, to) in which more than `most` is in use; −∞ where there is none. */
  lastOver(from: number, to: number, most: number): number {
    if (from >= to) return -Infinity;
    const { time, use } = this;
    for (let k = this.before(to); k >= 0; k--) {
      const end = k + 1 < this.count ? time[k + 1]! : Infinity;
      if (end <= from) return -Infinity;
      if (use[k]! > most) return end;
    }
    return -Infinity;
  }

  /** The step that begins at a moment; there is one from now on. */
  private stepAt(at: number): number {
    const k = this.before(at) + 1;
    if (k < this.count && this.time[k] === at) return k;
    if (this.count === this.time.length) this.grow();
    const { time, use } = this;
    // Mostly few steps come after it.
    for (let j = this.count++; j > k; j--) {
      time[j] = time[j - 1]!;
      use[j] = use[j - 1]!;
    }
    time[k] = at;
    use[k] = k > 0 ? use[k - 1]! : 0;
    return k;
  }

  /** The last step that begins before `at`; −1 where there is none. */
  private before(at: number): number {
    const { time } = this;
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (time[middle]! < at) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  private grow(): void {
    const [time, use] = [this.time, this.use];
    this.time = new Float64Array(2 * time.length);
    this.use = new Float64Array(2 * use.length);
    this.time.set(time);
    this.use.set(use);
  }
}
