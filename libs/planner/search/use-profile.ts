/** How much of a resource is surely in use, as a step function of time that follows its loads. */
export class UseProfile {
  /**
   * From `time[k]` to `time[k + 1]` there is `use[k]` in use; before the first and from the last on, nothing. A load that
   * is there at the beginning of a step is there throughout; use may stay the same from one step to the next.
   */
  time = new Int32Array(0);
  use = new Int32Array(0);
  count = 0;

  /**
   * Loads by number: their units, and when they are surely there, which is kept up to date here.
   * @param sureFrom not before `sureTo` where a load is nowhere for sure
   */
  constructor(
    private readonly amount: Int32Array,
    private readonly sureFrom: Int32Array,
    private readonly sureTo: Int32Array,
  ) {}

  /** The most that is in use. */
  peak(): number {
    const { use, count } = this;
    let peak = 0;
    for (let k = 0; k < count; k++) if (use[k]! > peak) peak = use[k]!;
    return peak;
  }

  /** A load is surely there at another time from now on. @param from not before `to` where it is nowhere for sure */
  move(load: number, from: number, to: number): void {
    if (this.count + 4 > this.time.length) this.clean();
    const amount = this.amount[load]!;
    const sureFrom = this.sureFrom[load]!;
    const sureTo = this.sureTo[load]!;
    this.sureFrom[load] = from;
    this.sureTo[load] = to;
    if (from >= to || sureFrom >= sureTo || from >= sureTo || to <= sureFrom) {
      this.add(sureFrom, sureTo, -amount);
      this.add(from, to, amount);
      return;
    }
    if (from < sureFrom) this.add(from, sureFrom, amount);
    else if (from > sureFrom) this.add(sureFrom, from, -amount);
    if (to > sureTo) this.add(sureTo, to, amount);
    else if (to < sureTo) this.add(to, sureTo, -amount);
  }

  /** The last step that begins before `t`; −1 where there is none. */
  lastBefore(t: number): number {
    const { time } = this;
    let low = 0;
    let high = this.count;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (time[middle]! < t) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  private add(from: number, to: number, amount: number): void {
    if (from >= to) return;
    const first = this.stepAt(from);
    const end = this.stepAt(to);
    const { use } = this;
    for (let k = first; k < end; k++) use[k]! += amount;
  }

  /** The step that begins at a moment; there is one from now on. */
  private stepAt(at: number): number {
    const { time, use } = this;
    const k = this.lastBefore(at) + 1;
    if (k < this.count && time[k] === at) return k;
    for (let j = this.count; j > k; j--) {
      time[j] = time[j - 1]!;
      use[j] = use[j - 1]!;
    }
    this.count++;
    time[k] = at;
    use[k] = k > 0 ? use[k - 1]! : 0;
    return k;
  }

  /** Without the steps at which loads began and ended before they moved. */
  private clean(): void {
    const { amount, sureFrom, sureTo } = this;
    const room = 4 * amount.length + 16;
    if (this.time.length < room) {
      this.time = new Int32Array(room);
      this.use = new Int32Array(room);
    }
    this.count = 0;
    for (let k = 0; k < amount.length; k++) this.add(sureFrom[k]!, sureTo[k]!, amount[k]!);
  }
}
