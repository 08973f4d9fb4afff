import type { Budget } from './budget.js';
import type { Claim, Placed, StageSearch } from './stage-search.js';

/** Conflicts to spend on one step at first. */
const STEP_LIMIT = 100;

/** `optimal`: nothing earlier exists; `impossible`: nothing at all; `limit`: the budget ran out first. */
export type EarlyOutcome = 'optimal' | 'impossible' | 'limit';

/**
 * Starts under which the claims hold, as early in total as the budget lets them. Steps towards the least conceivable
 * total are large at first; a step that fails for want of conflicts is halved, one that is impossible raises the least.
 * It can be broken off and goes on where it was.
 */
export class EarlySearch {
  private found: Extract<Placed, { status: 'placed' }> | undefined;
  private least: number;
  private share = 0.5;
  private limit = STEP_LIMIT;

  /** @param first starts under which the claims hold, if there are some already */
  constructor(
    private readonly search: StageSearch,
    private readonly claims: readonly Claim[],
    first?: Float64Array,
  ) {
    this.least = search.leastTotal;
    if (first) this.found = search.adopt(first);
  }

  /** The earliest starts so far, of all nodes. */
  get best(): Float64Array | undefined {
    return this.found?.starts;
  }

  /** Nothing is below this. */
  get lowerBound(): number {
    return this.least;
  }

  /** Goes on from starts found elsewhere, under which the claims hold. */
  adopt(starts: Float64Array): void {
    this.found = this.search.adopt(starts);
  }

  run(budget: Budget): EarlyOutcome {
    const { search, claims } = this;
    if (this.found === undefined) {
      const first = search.place(claims, budget);
      if (first.status === 'impossible') return 'impossible';
      if (first.status === 'limit') return 'limit';
      this.found = first;
    }
    while (this.found.total > this.least) {
      if (budget.left <= 0) return 'limit';
      const { total } = this.found;
      const step = Math.max(1, Math.floor((total - this.least) * this.share));
      // What holds for good teaches more than what is claimed.
      if (claims.length === 0) search.require(total - 1);
      const better = claims.length === 0 && step === 1 ? [] : [search.totalAtMost(total - step)];
      const tried = search.place([...better, ...claims], budget, this.limit);
      switch (tried.status) {
        case 'placed':
          this.found = tried;
          break;
        case 'impossible':
          this.least = tried.core.length === 0 ? total : total - step + 1;
          break;
        case 'limit':
          if (budget.stop()) return 'limit';
          if (step > 1) this.share /= 2;
          else this.limit *= 2;
      }
    }
    return 'optimal';
  }
}
