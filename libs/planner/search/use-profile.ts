/** A load and when it is surely there. */
interface Sure {
  readonly amount: number;
  readonly sureFrom: number;
  readonly sureTo: number;
}

/** How much of a resource is surely in use, as a step function of time. */
export class UseProfile {
  /** From `time[k]` to `time[k + 1]` there is `use[k]` in use; before the first and from the last on, nothing. */
  time = new Int32Array(16);
  use = new Int32Array(16);
  count = 0;
  /** The most that is in use. */
  peak = 0;
  /** The loads by when they surely begin and end; nearly in order from one time to the next. */
  private readonly byFrom: Sure[] = [];
  private readonly byTo: Sure[] = [];

  /** @param loads may grow until the first rebuild; their times change */
  constructor(private readonly loads: readonly Sure[]) {}

  /** To be called when times have changed. */
  rebuild(): void {
    const { byFrom, byTo, loads } = this;
    if (byFrom.length < loads.length) {
      byFrom.push(...loads);
      byTo.push(...loads);
      this.time = new Int32Array(2 * loads.length + 1);
      this.use = new Int32Array(2 * loads.length + 1);
    }
    for (let k = 1; k < byFrom.length; k++) {
      const load = byFrom[k]!;
      const key = load.sureFrom;
      let at = k - 1;
      for (; at >= 0 && byFrom[at]!.sureFrom > key; at--) byFrom[at + 1] = byFrom[at]!;
      byFrom[at + 1] = load;
    }
    for (let k = 1; k < byTo.length; k++) {
      const load = byTo[k]!;
      const key = load.sureTo;
      let at = k - 1;
      for (; at >= 0 && byTo[at]!.sureTo > key; at--) byTo[at + 1] = byTo[at]!;
      byTo[at + 1] = load;
    }
    this.sweep();
  }

  private sweep(): void {
    const { byFrom, byTo, time, use } = this;
    const length = byFrom.length;
    let amount = 0;
    let peak = 0;
    let count = 0;
    let from = 0;
    let to = 0;
    while (to < length) {
      // Those that are nowhere for sure begin and end at one moment.
      const at =
        from < length && byFrom[from]!.sureFrom < byTo[to]!.sureTo
          ? byFrom[from]!.sureFrom
          : byTo[to]!.sureTo;
      for (; from < length && byFrom[from]!.sureFrom === at; from++) amount += byFrom[from]!.amount;
      for (; to < length && byTo[to]!.sureTo === at; to++) amount -= byTo[to]!.amount;
      // A step too where use stays the same, so that a load that is there at its beginning is there throughout.
      time[count] = at;
      use[count++] = amount;
      if (amount > peak) peak = amount;
    }
    this.count = count;
    this.peak = peak;
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
}
