import type { Random } from '#units';
import { deliveriesOf, totalEnd } from '../deliveries.js';
import { loadsOf } from '../loads.js';
import type { Network } from '../network.js';
import type { Certainty, Problem } from '../problem.js';
import type { Budget } from './budget.js';
import { closeBusyTimes } from './close-busy-times.js';
import { componentLns } from './component-lns.js';
import { componentsOf } from './components.js';
import { EarlySearch } from './early-search.js';
import { geneticSearch } from './genetic-search.js';
import { holdPrevious } from './hold-previous.js';
import { insertion } from './insertion.js';
import { ListSchedules } from './list-schedules.js';
import { nodeStarts } from './node-starts.js';
import { pin, pinPrevious } from './pins.js';
import { shiftEarlier } from './shift-earlier.js';
import { StageLns } from './stage-lns.js';
import { StageSearch } from './stage-search.js';
import { startBounds, type StartBounds } from './start-bounds.js';

/** From so many stages that can move on, in several components, one component after the other is placed first. */
const JOINT = 60;

/** What the complete search and the neighbourhoods take of the budget by turns. */
const TURN = 500;

/** Edges of a model whose conflicts count as one each: in joint plans, and in the first turn of a single problem. */
const SMALL = 4000;
const SMALL_FIRST = 1000;

/** How turns grow, and the least and the most that neighbourhoods may take of what the complete search takes. */
const GROWTH = 1.1;
const LEAST_SHARE = 1;
const MOST_SHARE = 4;

/** About how many stages may be placed, repairs included, to push a first plan forward and backward: at most a second's work. */
const PUSHES = 400_000;

/** The share of what is left after the first turn that the genetic search may take. */
const GENETIC_SHARE = 0.25;
/** A budget without an end has no share that ends. */
const MOST_CHILDREN = 1500;

/** Stages that can move from which on a single problem is worth the genetic search and neighbourhoods. */
const LARGE = 50;

/** What is proved at the end: nothing earlier exists, nothing at all exists, or neither. */
export type Verdict = 'optimal' | 'feasible' | 'infeasible' | 'undecided';

export interface Found {
  /** Starts of all nodes; a schedule. */
  readonly starts: Float64Array;
  /** Stages, by number, that stay where the previous plan had them. */
  readonly pinned: readonly number[];
  /** The previous plan as it was, in which nothing is to be touched. */
  readonly isKept?: boolean;
}

/** What is to be placed. */
export interface Task {
  readonly p: Problem;
  readonly certainty: Certainty;
  /** The problem at the certainty. */
  readonly net: Network;
  readonly random: Random;
  readonly budget: Budget;
}

/**
 * Schedules, each better than the one before, until nothing better exists or the budget is spent. Stages stay where the
 * previous plan had them as far as they can; else all come as early in total as can be found.
 * @yields better starts, or null now and then where none were found
 */
export function* placements(task: Task): Generator<Found | null, Verdict> {
  const { p, net } = task;
  const unchanged = holdPrevious(p, net, loadsOf(p));
  if (unchanged !== null) {
    yield { starts: unchanged, pinned: [], isKept: true };
    return 'feasible';
  }
  const open = { ...task, net: closeBusyTimes(net, loadsOf(p)) };
  const movable = p.stages.filter(({ fixed }) => fixed === undefined);
  if (movable.length < JOINT || movable.some(({ previous }) => previous !== undefined)) {
    return yield* atOnce(open);
  }
  const components = componentsOf(p);
  if (components.length === 1) return yield* atOnce(open);
  const within = startBounds(open.net);
  return within === null ? 'infeasible' : yield* jointly(open, components, within);
}

/**
 * By the complete search; where much is to be placed and nothing has to stay, then by a genetic search over lists, and by
 * turns with neighbourhoods.
 */
function* atOnce({ p, net, random, budget }: Task): Generator<Found | null, Verdict> {
  const search = StageSearch.over(p, net, random);
  if (search === null) return 'infeasible';
  const movable = p.stages.filter(({ fixed }) => fixed === undefined);
  const hasPrevious = movable.some(({ previous }) => previous !== undefined);
  const held = hasPrevious ? pinPrevious(p, search, budget) : null;
  const pinned = held?.stages ?? [];
  const claims = pinned.flatMap((i) => pin(p, search, i));
  const early = new EarlySearch(search, claims, held?.placed.starts);
  if (held !== null || movable.length < LARGE) {
    const outcome = early.run(budget);
    if (outcome === 'impossible') return 'infeasible';
    if (early.best === undefined) return 'undecided';
    yield { starts: early.best, pinned };
    return outcome === 'optimal' ? 'optimal' : 'feasible';
  }
  const lns = new StageLns(search, random);
  const turn = { left: 0, stop: budget.stop };
  let best: Float64Array | undefined;
  let share = 1;
  const first = Math.ceil(TURN / Math.max(1, search.model.edges.length / SMALL_FIRST));
  for (let size = TURN; ; size *= GROWTH) {
    turn.left = Math.min(size === TURN ? first : size, budget.left);
    budget.left -= turn.left;
    const outcome = early.run(turn);
    if (outcome === 'impossible') return 'infeasible';
    if (early.best && early.best !== best) yield { starts: (best = early.best), pinned };
    if (outcome === 'optimal') return 'optimal';
    if (size === TURN) {
      const lists = new ListSchedules(search, search.lags);
      const total = best === undefined ? Infinity : search.totalOf(best);
      turn.left = Math.min(Math.floor(GENETIC_SHARE * budget.left), MOST_CHILDREN);
      budget.left -= turn.left;
      for (const child of geneticSearch(lists, total, early.lowerBound, random, turn)) {
        yield child && { starts: (best = child.starts), pinned };
      }
      budget.left += Math.max(0, turn.left);
      if (best !== undefined) early.adopt(best);
    }
    if (best !== undefined) {
      turn.left = Math.min(share * size, budget.left);
      budget.left -= turn.left;
      const before = best;
      while (turn.left > 0 && !budget.stop()) {
        const better = lns.improve(best, turn);
        if (better === null) continue;
        yield { starts: (best = better), pinned };
        if (search.totalOf(best) <= search.leastTotal) return 'optimal';
      }
      // Neighbourhoods get more the more they find.
      share = best === before ? Math.max(0.7 * share, LEAST_SHARE) : Math.min(2 * share, MOST_SHARE);
      if (best !== before) early.adopt(best);
    }
    if (budget.left <= 0 || budget.stop()) return best === undefined ? 'undecided' : 'feasible';
  }
}

/** One component after the other, all pushed forward and backward; then the complete search and neighbourhoods by turns. */
function* jointly(
  task: Task,
  components: readonly (readonly number[])[],
  within: StartBounds,
): Generator<Found | null, Verdict> {
  const { p, certainty, net, random, budget } = task;
  const all = loadsOf(p);
  const found = (starts: Float64Array): Found => ({ starts, pinned: [] });
  const totalOf = totalIn(p, net);
  const inserted = yield* insertion(p, certainty, components, within, random, budget);
  let best: Float64Array | undefined;
  if (inserted !== null) {
    best = shiftEarlier(net, all, nodeStarts(net, inserted), within.least);
    yield found(best);
    const lists = new ListSchedules({ net, all, within, deliveries: deliveriesOf(p), totalOf });
    const pushed = lists.forwardBackward(lists.of(best), Math.ceil(PUSHES / p.stages.length));
    if (pushed.starts !== best) yield found((best = pushed.starts));
    if (budget.stop()) return 'feasible';
  }
  const search = StageSearch.over(p, net, random);
  if (search === null) return 'infeasible';
  const early = new EarlySearch(search, [], best);
  const turn = { left: 0, stop: budget.stop };
  const begin = (): void => {
    turn.left = Math.min(TURN, budget.left);
    budget.left -= turn.left;
  };
  const stageStarts = new Float64Array(p.stages.length);
  const lns = componentLns(p, certainty, components, stageStarts, random, turn);
  for (;;) {
    begin();
    // Conflicts of a large model take longer.
    turn.left = Math.ceil(turn.left / Math.max(1, search.model.edges.length / SMALL));
    const outcome = early.run(turn);
    if (outcome === 'impossible') return 'infeasible';
    if (early.best && early.best !== best) yield found((best = early.best));
    if (outcome === 'optimal') return 'optimal';
    if (budget.stop()) break;
    yield null;
    if (best !== undefined) {
      begin();
      stageStarts.set(best.subarray(0, p.stages.length));
      while (turn.left > 0 && !budget.stop()) {
        const isBetter = lns.next().value === true;
        if (!isBetter) {
          yield null;
          continue;
        }
        const shifted: Float64Array = shiftEarlier(net, all, nodeStarts(net, stageStarts), within.least);
        if (totalOf(shifted) < totalOf(best)) yield found((best = shifted));
        stageStarts.set(best.subarray(0, p.stages.length));
      }
      early.adopt(best);
    }
    if (budget.left <= 0 || budget.stop()) break;
  }
  return best === undefined ? 'undecided' : 'feasible';
}

function totalIn(p: Problem, net: Network): (starts: Float64Array) => number {
  const deliveries = deliveriesOf(p);
  return (starts) =>
    totalEnd(
      deliveries,
      (i) => starts[i]!,
      (i) => net.duration[i]!,
    );
}
