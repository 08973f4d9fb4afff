/** How much of some resources is in use, as a step function of time to which loads are added one by one. */
export class StepProfile {
  /**
   * From `time[k]` to `time[k + 1]` there is `use[k * width + r]` of resource r in use; before the first and from the
   * last on, nothing.
   */
  private time = new Float64Array(16);
  private use: Float64Array;
  private count = 0;

  /** @param width how many resources */
  constructor(private readonly width: number) {
    this.use = new Float64Array(16 * width);
  }

  /** Becomes the same as another of the same width. */
  copy({ time, use, count }: StepProfile): void {
    while (this.time.length < count) this.grow();
    for (let k = 0; k < count; k++) this.time[k] = time[k]!;
    for (let k = 0; k < count * this.width; k++) this.use[k] = use[k]!;
    this.count = count;
  }

  /** Adds so much of every resource. No effect where `from` is not before `to`. */
  add(from: number, to: number, amounts: Float64Array): void {
    if (from >= to) return;
    const { width } = this;
    const first = this.stepAt(from);
    const end = this.stepAt(to);
    const { use } = this;
    for (let k = first * width; k < end * width; k += width) {
      for (let r = 0; r < width; r++) use[k + r]! += amounts[r]!;
    }
  }

  /** Adds so much of one resource. @param amount below 0 to take back what was added */
  addTo(r: number, from: number, to: number, amount: number): void {
    if (from >= to) return;
    const first = this.stepAt(from);
    const end = this.stepAt(to);
    for (let k = first; k < end; k++) this.use[k * this.width + r]! += amount;
  }

  /**
   * The first moment from `at` on from which for so long never more than `most` is in use.
   * @param most of each resource; infinite where it does not matter
   */
  firstFit(at: number, length: number, most: Float64Array): number {
    const { time, use, count, width } = this;
    if (length <= 0) return at;
    let start = at;
    for (let k = Math.max(this.before(at + 1), 0); k < count && time[k]! < start + length; k++) {
      for (let r = 0; r < width; r++) {
        if (use[k * width + r]! <= most[r]!) continue;
        start = k + 1 < count ? time[k + 1]! : Infinity;
        break;
      }
    }
    return start;
  }

  /** The end of the last step in [from, to) in which more than `most` of a resource is in use; −∞ where there is none. */
  lastOver(r: number, from: number, to: number, most: number): number {
    if (from >= to) return -Infinity;
    const { time, use, width } = this;
    for (let k = this.before(to); k >= 0; k--) {
      const end = k + 1 < this.count ? time[k + 1]! : Infinity;
      if (end <= from) return -Infinity;
      if (use[k * width + r]! > most) return end;
    }
    return -Infinity;
  }

  /** The step that begins at a moment; there is one from now on. */
  private stepAt(at: number): number {
    const k = this.before(at) + 1;
    if (k < this.count && this.time[k] === at) return k;
    if (this.count === this.time.length) this.grow();
    const { time, use, width } = this;
    // Mostly few steps come after it.
    for (let j = this.count; j > k; j--) time[j] = time[j - 1]!;
    for (let j = (this.count + 1) * width - 1; j >= (k + 1) * width; j--) use[j] = use[j - width]!;
    time[k] = at;
    for (let r = 0; r < width; r++) use[k * width + r] = k > 0 ? use[(k - 1) * width + r]! : 0;
    this.count++;
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
