import { likelyEnd } from './likely-end.js';
import type { Certainty, Odds, Problem, Schedule, ScheduleOutcome } from './problem.js';
import { pinned } from './pinned.js';
import { selectByPairedSimulation, type Candidate } from './paired-simulation.js';
import { withoutUncertainPreferences } from './preferences.js';
import { ScheduleSearch, withoutSchedule } from './schedule.js';

/** From cautious to likely. The cautious plan is not always the best: it may open a window past its close. */
export const CERTAINTIES: readonly Certainty[] = [0.9, 0.85, 0.8, 0.7, 0.6, 0.5];

export interface PlanOptions {
  /** Breaks ties; same request and seed, same answer, unless `stop` strikes. */
  readonly seed: number;
  /** Simulated for each distinct schedule, 1 or more. */
  readonly scenarios: number;
  /** To try, in this order; by default 0.9 down to 0.5. */
  readonly certainties?: readonly Certainty[];
  /**
   * Starts, by stage id, that the plan must have. They bind the plan only: the odds are those of coming to the bench then,
   * and of waiting there or coming back where the soap is not ready.
   */
  readonly pins?: ReadonlyMap<string, number>;
  /** Choose by odds, whatever has to be waited for them: see `selectByPairedSimulation`. */
  readonly oddsAlone?: boolean;
  /** Conflicts to learn from at each certainty, 0 or more. */
  readonly limit?: number;
  /** Asked now and then; the best plan so far is the answer soon after it says true. */
  readonly stop?: () => boolean;
}

/**
 * The schedule that is best by odds and by when it is likely to be ready, as `selectByPairedSimulation` weighs them, among those
 * made at several certainties. Certainties take turns, so that each has a first schedule before any is made better. Where what is only
 * preferred leaves no schedule at a certainty, one is made there without it, but for preferences of known length, which can
 * always be kept or are the maker's own to change.
 * @returns the outcome and its odds; without any schedule, the outcome at the last certainty and null
 */
export function plan(
  p: Problem,
  options: PlanOptions,
): { readonly outcome: ScheduleOutcome; readonly odds: Odds | null } {
  const {
    seed,
    scenarios,
    certainties = CERTAINTIES,
    pins = new Map<string, number>(),
    limit,
    stop,
    oddsAlone = false,
  } = options;
  const asked = pinned(p, pins);
  const last = certainties.at(-1);
  if (last === undefined) throw new RangeError('no certainty to plan at');
  const limits = { ...(limit !== undefined && { limit }), ...(stop && { stop }) };
  const candidates: Candidate[] = [];
  const enter = (found: Schedule | undefined): void => {
    if (found === undefined || candidates.some((other) => sameStarts(other.schedule, found))) return;
    candidates.push({ schedule: found, ...likelyEnd(p, found) });
  };
  const isOver = (): boolean => stop !== undefined && stop() && candidates.length > 0;
  const searchAt = (of: Problem, at: readonly Certainty[]): ScheduleSearch[] => {
    const searches = at.map((certainty) => new ScheduleSearch(of, { certainty, seed, ...limits }));
    for (let left = searches; left.length > 0 && !isOver();) {
      left = left.filter((search) => {
        if (isOver()) return false;
        const isFirst = !search.hasSchedule;
        const goesOn = search.step();
        // What is made better may be made less safe: both are candidates.
        if (goesOn && isFirst) enter(search.schedule());
        return goesOn;
      });
    }
    for (const search of searches) enter(search.schedule());
    return searches;
  };
  let searches = searchAt(asked, certainties);
  const required = withoutUncertainPreferences(asked);
  if (required !== asked) {
    const found = searches;
    const left = certainties.filter((_, k) => !found[k]!.hasSchedule);
    if (left.length > 0) searches = searchAt(required, left);
  }
  if (candidates.length === 0) {
    const verdict = searches.at(-1)?.verdict === 'infeasible' ? 'infeasible' : 'limit';
    return { outcome: withoutSchedule(required, verdict, { certainty: last, seed, ...limits }), odds: null };
  }
  const best = selectByPairedSimulation(p, candidates, { seed, scenarios, oddsAlone, ...(stop && { stop }) });
  return { outcome: { status: 'planned', schedule: best.schedule }, odds: best.odds };
}

function sameStarts(a: Schedule, b: Schedule): boolean {
  return [...a.starts].every(([id, start]) => b.starts.get(id) === start);
}
