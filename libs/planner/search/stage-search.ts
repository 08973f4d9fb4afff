import type { Random } from '#units';
import { deliveriesOf, totalEnd } from '../deliveries.js';
import { nextIn } from '../domains.js';
import { LearningSearch } from '../learning/learning-search.js';
import { loadsOf, type ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import type { Problem } from '../problem.js';
import type { Budget } from './budget.js';
import { LagPaths } from './lag-paths.js';
import type { LagEdge } from './list-scheduler.js';
import { settlePairs } from './load-conflicts.js';
import { shiftEarlier } from './shift-earlier.js';
import { startBounds, type StartBounds } from './start-bounds.js';
import { stageModel, TRANSITIVE, valuesOf, type StageModel } from './stage-model.js';
import { symmetryOrders, type SymmetryOrder } from './symmetry.js';

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
  readonly leastTotal: number;
  readonly model: StageModel;
  private readonly search: LearningSearch;

  private constructor(
    readonly net: Network,
    readonly all: readonly ResourceLoads[],
    readonly deliveries: readonly (readonly number[])[],
    readonly within: StartBounds,
    paths: LagPaths,
    orders: readonly SymmetryOrder[],
    random: Random,
  ) {
    this.model = stageModel(net, all, within, paths, deliveries, orders);
    this.search = new LearningSearch(this.model, random);
    this.leastTotal = this.model.bounds[2 * this.model.total]!;
  }

  /**
   * @param breaksSymmetry whether components that can stand in for each other are kept in one order
   * @returns null when lags and hours, or pairs that can only come in one order, leave no starts
   */
  static over(p: Problem, net: Network, random: Random, breaksSymmetry = true): StageSearch | null {
    const within = startBounds(net);
    if (within === null) return null;
    const paths = new LagPaths(net);
    const orders = breaksSymmetry ? symmetryOrders(p, net, paths) : [];
    const all = loadsOf(p);
    if (paths.count <= TRANSITIVE && !settlePairs(net, all, within, paths)) return null;
    return new StageSearch(net, all, deliveriesOf(p), within, paths, orders, random);
  }

  /** The lags between nodes, with what follows from pairs of loads that can come in one order only. */
  get lags(): LagEdge[] {
    const { model, net } = this;
    return model.edges.flatMap(({ from, to, weight, choice }): LagEdge[] =>
      choice < 0 && to >> 1 < net.count ? [{ from: from >> 1, to: to >> 1, weight }] : [],
    );
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

  /** From now on only placements with at most this total are looked for, whatever the claims. */
  require(total: number): void {
    this.search.require(...this.totalAtMost(total));
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
        const starts = this.earlier(values, claims);
        for (let i = 0; i < net.count; i++) values[i] = starts[i]! - model.origin;
        search.follow(values);
        return { status: 'placed', starts, total: this.totalOf(starts) };
      }
    }
  }

  /** Starts found elsewhere, as a placement from which the search goes on. They must be a schedule. */
  adopt(starts: Float64Array): Extract<Placed, { status: 'placed' }> {
    const { net, model, search } = this;
    search.follow(valuesOf(model, net, starts));
    return { status: 'placed', starts, total: this.totalOf(starts) };
  }

  /** The search stops at any solution; its order may allow for an earlier one. */
  private earlier(values: Int32Array, claims: readonly Claim[]): Float64Array {
    const { net, model, all } = this;
    const starts = Float64Array.from({ length: net.count }, (_, i) => values[i]! + model.origin);
    const least = this.within.least.slice();
    for (const [side, value] of claims) {
      const i = side >> 1;
      if (side % 2 === 0 && i < net.count)
        least[i] = nextIn(net.domains[i]!, Math.max(least[i]!, value + model.origin));
    }
    return shiftEarlier(net, all, starts, least);
  }

  /** The ends of all deliveries added up, in minutes after the model's origin. @param starts of all nodes */
  readonly totalOf = (starts: Float64Array): number => {
    const { deliveries, net, model } = this;
    return totalEnd(
      deliveries,
      (i) => starts[i]! - model.origin,
      (i) => net.duration[i]!,
    );
  };
}
