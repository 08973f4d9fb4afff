import type { Budget } from './budget.js';
import type { Claim, Placed, StageSearch } from './stage-search.js';

/** Conflicts to spend on one step at first. */
const STEP_LIMIT = 100;

/**
 * Starts under which the claims hold, as early in total as the budget lets them. Steps towards the least conceivable
 * total are large at first; a step that fails for want of conflicts is halved, one that is impossible raises the least.
 * @param first starts under which the claims hold, if there are some already
 */
export function placeEarly(
  search: StageSearch,
  claims: readonly Claim[],
  budget: Budget,
  first?: Placed,
): Placed {
  let best = first ?? search.place(claims, budget);
  if (best.status !== 'placed') return best;
  let least = search.leastTotal;
  let share = 0.5;
  let limit = STEP_LIMIT;
  while (best.total > least && budget.left > 0) {
    const step = Math.max(1, Math.floor((best.total - least) * share));
    const found = search.place([search.totalAtMost(best.total - step), ...claims], budget, limit);
    switch (found.status) {
      case 'placed':
        best = found;
        break;
      case 'impossible':
        least = best.total - step + 1;
        break;
      case 'limit':
        if (budget.stop()) return best;
        if (step > 1) share /= 2;
        else limit *= 2;
    }
  }
  return best;
}
