import type { Random } from '#units';
import { deliveriesOf } from '../deliveries.js';
import { LearningSearch } from '../learning/learning-search.js';
import { loadsOf } from '../loads.js';
import type { Network } from '../network.js';
import type { Problem } from '../problem.js';
import type { Budget } from './budget.js';
import { startBounds } from './start-bounds.js';
import { stageModel, type StageModel } from './stage-model.js';

/** A literal of the search. */
export type Claim = readonly [side: number, value: number];

/** What a search for starts came to. */
export type Placed =
  | { readonly status: 'placed'; readonly starts: Float64Array; readonly total: number }
  /** There are none. Of the claims, these cannot hold together; none where it is not for the claims. */
  | { readonly status: 'impossible'; readonly core: readonly Claim[] }
  | { readonly status: 'limit' };

/** The learning search over the nodes of a network and what resources ask of them. */
export class StageSearch {
  /** No placement has a total below this. */
  leastTotal: number;
  private readonly search: LearningSearch;

  private constructor(
    private readonly net: Network,
    private readonly model: StageModel,
    random: Random,
  ) {
    this.search = new LearningSearch(model, random);
    this.leastTotal = model.bounds[2 * model.total]!;
  }

  /** @returns null when lags and hours alone leave no starts */
  static over(p: Problem, net: Network, random: Random): StageSearch | null {
    const within = startBounds(net);
    if (within === null) return null;
    return new StageSearch(net, stageModel(net, loadsOf(p), within, deliveriesOf(p)), random);
  }

  /** Node `i` starts at `at` or later. */
  notBefore(i: number, at: number): Claim {
    return [2 * i, at - this.model.origin];
  }

  /** Node `i` starts at `at` or earlier. */
  notAfter(i: number, at: number): Claim {
    return [2 * i + 1, this.model.origin - at];
  }

  totalAtMost(total: number): Claim {
    return [2 * this.model.total + 1, -total];
  }

  /** Starts under which the claims hold. @param limit conflicts to learn from, of those that the budget has left */
  place(claims: readonly Claim[], budget: Budget, limit = Infinity): Placed {
    const { search, model, net } = this;
    const before = search.conflicts;
    const outcome = search.run(Math.min(limit, budget.left), budget.stop, claims.flat());
    budget.left -= search.conflicts - before;
    switch (outcome) {
      case 'limit':
        return { status: 'limit' };
      case 'exhausted':
        return { status: 'impossible', core: [] };
      case 'refuted': {
        const { core } = search;
        const literals = Array.from({ length: core.length / 2 }, (_, k): Claim => [
          core[2 * k]!,
          core[2 * k + 1]!,
        ]);
        return { status: 'impossible', core: literals };
      }
      case 'solution': {
        const values = search.solution();
        search.follow(values);
        const starts = Float64Array.from({ length: net.count }, (_, i) => values[i]! + model.origin);
        return { status: 'placed', starts, total: values[model.total]! };
      }
    }
  }
}
