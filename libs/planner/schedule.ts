import { seededRandom } from '#units';
import { chain } from './chain.js';
import { compileProblem } from './compile-problem.js';
import { leastSolution } from './fixed-point.js';
import { loadsOf, type ResourceLoads } from './loads.js';
import type { Network } from './network.js';
import { reduceSittings } from './reduce-sittings.js';
import type { Certainty, Precedence, Problem, Schedule, ScheduleOutcome } from './problem.js';
import { resourceConflict } from './resource-conflict.js';
import { placements, type Found, type Verdict } from './search/placements.js';
import { lagConflict } from './windows.js';

/** Conflicts to learn from when the caller sets no limit. */
const DEFAULT_LIMIT = 2000;

export interface ScheduleOptions {
  readonly certainty: Certainty;
  readonly seed: number;
  /** Conflicts to learn from, 0 or more; more may find an earlier end. */
  readonly limit?: number;
  /** Asked now and then; the best schedule so far, or the smallest conflict, is the answer soon after it says true. */
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
  return typeof found === 'object'
    ? { status: 'planned', schedule: found }
    : withoutSchedule(p, found, options);
}

/** The outcome for a problem of which a search has found no schedule: why there is none, or that this is not known. */
export function withoutSchedule(
  p: Problem,
  verdict: 'infeasible' | 'limit',
  { certainty, seed, limit = DEFAULT_LIMIT, stop }: ScheduleOptions,
): ScheduleOutcome {
  if (verdict === 'limit') return { status: 'undecided', reason: 'limit' };
  const requirements =
    leastSolution(compileProblem(p, certainty)) === null
      ? lagConflict(p, certainty, [], stop)
      : resourceConflict(p, certainty, seed, limit, stop);
  return { status: 'conflict', requirements };
}

/** The same without the reasons for a conflict, which cost more than finding it. */
export function place(p: Problem, options: ScheduleOptions): Schedule | 'infeasible' | 'limit' {
  const search = new ScheduleSearch(p, options);
  while (search.step());
  return search.schedule() ?? (search.verdict === 'infeasible' ? 'infeasible' : 'limit');
}

/** A search for a schedule that can be asked at any time for the best so far, and goes on by steps. */
export class ScheduleSearch {
  /** Undefined as long as it goes on. */
  verdict: Verdict | undefined;
  private found: Found | undefined;
  private reduced: Schedule | undefined;
  private readonly net: Network;
  private readonly all: readonly ResourceLoads[];
  private readonly steps: Generator<Found | null, Verdict>;

  constructor(
    private readonly p: Problem,
    private readonly options: ScheduleOptions,
  ) {
    const { certainty, seed, limit = DEFAULT_LIMIT, stop = () => false } = options;
    this.all = loadsOf(p);
    this.net = compileProblem(p, certainty);
    const budget = { left: limit, stop };
    this.steps = placements({ p, certainty, net: this.net, random: seededRandom(seed), budget });
  }

  get hasSchedule(): boolean {
    return this.found !== undefined;
  }

  /** Some milliseconds of work, or as much as a small problem takes. @returns whether there is more to do */
  step(): boolean {
    if (this.verdict !== undefined) return false;
    const { done, value } = this.steps.next();
    if (done) this.verdict = value;
    else if (value !== null) {
      this.found = value;
      this.reduced = undefined;
    }
    return !done;
  }

  /** The best so far, with few sittings. */
  schedule(): Schedule | undefined {
    const { p, net, all, found, options } = this;
    if (found === undefined || this.reduced) return this.reduced;
    const { starts, pinned, isKept } = found;
    const settled = isKept ? starts : reduceSittings(p, net, all, starts, new Set(pinned), options.stop);
    return (this.reduced = scheduleOf(p, net, all, settled, options.certainty));
  }
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
