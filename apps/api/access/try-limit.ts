/**
 * Counts wrong tries within a moving span of time. It is kept in this process, for all who try together: whoever
 * guesses from many addresses gets no more tries, and those signed in already notice nothing.
 */
export class TryLimit {
  private tries: number[] = [];

  /**
   * @param most tries within the span
   * @param spanMs length of the span
   */
  constructor(
    private readonly now: () => Date,
    private readonly most: number,
    private readonly spanMs: number,
  ) {}

  /**
   * Takes a try, before it is known whether it is right, so that many at once count too.
   * @returns a function that gives it back because it was right, or the seconds until there is one again
   */
  take(): (() => void) | number {
    const now = this.now().getTime();
    this.tries = this.tries.filter((at) => at > now - this.spanMs);
    const [oldest] = this.tries;
    if (oldest !== undefined && this.tries.length >= this.most) {
      return Math.ceil((oldest + this.spanMs - now) / 1000);
    }
    this.tries.push(now);
    return () => {
      const index = this.tries.indexOf(now);
      if (index >= 0) this.tries.splice(index, 1);
    };
  }
}
