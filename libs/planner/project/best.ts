/** The shortest schedule so far. */
export class Best {
  starts: Int32Array | null = null;

  constructor(private readonly onImproved: (makespan: number, starts: Int32Array) => void) {}

  /** Infinite while there is none. */
  get makespan(): number {
    return this.starts?.at(-1) ?? Infinity;
  }

  /** No effect unless it is shorter. */
  improve(starts: Int32Array): void {
    if (starts.at(-1)! >= this.makespan) return;
    this.starts = starts.slice();
    this.onImproved(this.makespan, this.starts);
  }
}
