import type { Random } from '#units';
import { LearningSearch } from '../learning/learning-search.js';
import type { Budget } from './budget.js';
import { alongLags, aroundMoment, type Destroy } from './lns-destroy.js';
import { repairModel } from './lns-repair.js';
import { shiftEarlier } from './shift-earlier.js';
import { valuesOf } from './stage-model.js';
import type { StageSearch } from './stage-search.js';

/** Conflicts for one neighbourhood, and how many of them for a schedule as good as the best. */
const CONFLICTS = 100;
const MOVE_CONFLICTS = 50;

/** What looking at a neighbourhood costs besides, in conflicts. */
const SETUP = 50;

/** Stages freed at first, and at least; and how much more or less after each. */
const FREED = 20;
const LEAST_FREED = 8;
const STEP = 1.03;

/** How often what hangs together is freed; else what stands around a moment. */
const WALKING = 0.5;

/** A way to choose what is freed, and how many that are at present. */
interface Kind {
  size: number;
  readonly destroy: Destroy;
}

/**
 * Large-neighbourhood search (Shaw, CP 1998) over stages: frees some of the best schedule (destroy), keeps the order of
 * the others, and lets a search that learns look for something earlier (repair). How many are freed follows from how hard that is.
 */
export class StageLns {
  private readonly kinds: readonly [Kind, Kind];
  /** As good as the best. */
  private current: Float64Array | null = null;

  constructor(
    private readonly whole: StageSearch,
    private readonly random: Random,
  ) {
    const { net } = whole;
    this.kinds = [
      { size: FREED, destroy: alongLags(net) },
      { size: FREED, destroy: aroundMoment(net) },
    ];
  }

  /** Looks at one neighbourhood. @param best starts of all nodes @returns earlier starts, or null */
  improve(best: Float64Array, budget: Budget): Float64Array | null {
    const { whole, random } = this;
    const { net, model } = whole;
    const least = whole.totalOf(best);
    if (this.current === null || whole.totalOf(this.current) > least) this.current = best;
    const kind = this.kinds[random.next() < WALKING ? 0 : 1];
    const isFree = kind.destroy(this.current, kind.size, random);
    const small = repairModel(model, net, this.current, isFree, random);
    const search = new LearningSearch(small, random);
    const side = 2 * model.total + 1;
    search.require(side, -least);
    // First another schedule as good, so as not to stay where nothing is left to find; then earlier ones.
    let outcome = search.run(MOVE_CONFLICTS, budget.stop);
    if (outcome !== 'solution') search.follow(valuesOf(small, net, this.current));
    let found: Float64Array | null = null;
    let total = least;
    do {
      if (outcome === 'solution') {
        const values = search.solution();
        search.follow(values);
        const starts = Float64Array.from({ length: net.count }, (_, i) => values[i]! + model.origin);
        this.current = shiftEarlier(net, whole.all, starts, whole.within.least);
        const reached = whole.totalOf(this.current);
        if (reached < total) {
          found = this.current;
          total = reached;
        }
      }
      if (total <= whole.leastTotal) break;
      search.require(side, 1 - total);
      outcome = search.run(CONFLICTS - search.conflicts, budget.stop);
    } while (outcome === 'solution');
    if (outcome === 'exhausted') kind.size = Math.min(kind.size * STEP, net.stageCount);
    else kind.size = Math.max(kind.size / STEP, LEAST_FREED);
    budget.left -= SETUP + search.conflicts;
    return found;
  }
}
