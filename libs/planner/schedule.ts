import { seededRandom } from '#units';
import { chain } from './chain.js';
import { compileProblem } from './compile-problem.js';
import { leastSolution } from './fixed-point.js';
import { loadsOf, type ResourceLoads } from './loads.js';
import type { Network } from './network.js';
import { joinSittings } from './polish.js';
import type { Certainty, Precedence, Problem, Schedule, ScheduleOutcome } from './problem.js';
import { resourceConflict } from './resource-conflict.js';
import { holdPrevious } from './search/hold-previous.js';
import { pin, pinPrevious } from './search/pins.js';
import { placeEarly } from './search/place-early.js';
import { StageSearch } from './search/stage-search.js';
import { lagConflict } from './windows.js';

/** Conflicts to learn from when the caller sets no limit. */
const DEFAULT_LIMIT = 2000;

export interface ScheduleOptions {
  readonly certainty: Certainty;
  readonly seed: number;
  /** Conflicts to learn from, 0 or more; more may find an earlier end. */
  readonly limit?: number;
  /** Asked now and then; the best schedule so far is the answer soon after it says true. */
  readonly stop?: () => boolean;
}

/**
 * Start times that honour lags, calendars and resources, lags being taken at the given certainty. Aims, in
 * order: keep stages where `previous` had them; deliver early; few sittings. `latest` is a bound and never broken.
 * @param options.seed breaks ties; same request and seed, same answer
 * @returns a schedule with the precedences that keep it resource-feasible when stages shift; or a minimal set of
 *   requirements in conflict (as small as the limit let it be shown); or `undecided` when the limit ran out first
 */
export function schedule(p: Problem, options: ScheduleOptions): ScheduleOutcome {
  const found = place(p, options);
  if (typeof found === 'object') return { status: 'planned', schedule: found };
  if (found === 'limit') return { status: 'undecided', reason: 'limit' };
  const { certainty, seed, limit = DEFAULT_LIMIT } = options;
  const requirements =
    leastSolution(compileProblem(p, certainty)) === null
      ? lagConflict(p, certainty)
      : resourceConflict(p, certainty, seed, limit);
  return { status: 'conflict', requirements };
}

/** The same without the reasons for a conflict, which cost more than finding it. */
export function place(p: Problem, options: ScheduleOptions): Schedule | 'infeasible' | 'limit' {
  const { certainty, seed, limit = DEFAULT_LIMIT, stop = () => false } = options;
  const net = compileProblem(p, certainty);
  const all = loadsOf(p);
  const unchanged = holdPrevious(p, net, all);
  if (unchanged !== null) return scheduleOf(p, net, all, unchanged, certainty);
  const search = StageSearch.over(p, net, seededRandom(seed));
  if (search === null) return 'infeasible';
  const budget = { left: limit, stop };
  const held = pinPrevious(p, search, budget);
  const pinned = held?.stages ?? [];
  const found = placeEarly(
    search,
    pinned.flatMap((i) => pin(p, search, i)),
    budget,
    held?.placed,
  );
  if (found.status === 'limit') return 'limit';
  if (found.status === 'impossible') return 'infeasible';
  const starts = joinSittings(p, net, all, found.starts, new Set(pinned));
  return scheduleOf(p, net, all, starts, certainty);
}

function scheduleOf(
  p: Problem,
  net: Network,
  all: readonly ResourceLoads[],
  starts: Float64Array,
  certainty: Certainty,
): Schedule {
  const precedences = chain(all, starts, net.duration).flatMap(
    ({ before, after, resource }): Precedence[] => {
      const [first, second] = [p.stages[before], p.stages[after]];
      return first && second ? [{ before: first.id, after: second.id, resource }] : [];
    },
  );
  return { starts: new Map(p.stages.map((stage, i) => [stage.id, starts[i]!])), precedences, certainty };
}
