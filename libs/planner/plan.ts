import { deliveriesOf, totalEnd } from './deliveries.js';
import type { Certainty, Odds, Problem, Schedule, ScheduleOutcome } from './problem.js';
import { pinned } from './pinned.js';
import { race, type Runner } from './race.js';
import { place, schedule } from './schedule.js';

/** From cautious to likely. The cautious plan is not always the best: it may open a window past its close. */
export const CERTAINTIES: readonly Certainty[] = [0.9, 0.85, 0.8, 0.7, 0.6, 0.5];

/**
 * The schedule with the best odds, as `race` finds it, among those made at several certainties; equal odds go to the one that is ready
 * first.
 * @param options.pins starts, by stage id, that the plan must have. They bind the plan only: the odds are those of
 *   coming to the bench then, and of waiting there or coming back where the soap is not ready
 * @param options.scenarios simulated for each distinct schedule, 1 or more
 * @param options.certainties to try, in this order; by default 0.9 down to 0.5
 * @returns the outcome and its odds; without any schedule, the outcome at the last certainty and null
 */
export function plan(
  p: Problem,
  options: {
    readonly seed: number;
    readonly scenarios: number;
    readonly certainties?: readonly Certainty[];
    readonly pins?: ReadonlyMap<string, number>;
  },
): { readonly outcome: ScheduleOutcome; readonly odds: Odds | null } {
  const { seed, scenarios, certainties = CERTAINTIES, pins = new Map<string, number>() } = options;
  const asked = pinned(p, pins);
  if (certainties.length === 0) throw new RangeError('no certainty to plan at');
  const candidates: Runner[] = [];
  for (const certainty of certainties) {
    const found = place(asked, { certainty, seed });
    if (typeof found !== 'object' || candidates.some((other) => sameStarts(other.schedule, found))) continue;
    candidates.push({ schedule: found, total: totalOf(p, found) });
  }
  const last = certainties.at(-1)!;
  if (candidates.length === 0) return { outcome: schedule(asked, { certainty: last, seed }), odds: null };
  const best = race(p, candidates, { seed, scenarios });
  return { outcome: { status: 'planned', schedule: best.schedule }, odds: best.odds };
}

function sameStarts(a: Schedule, b: Schedule): boolean {
  return [...a.starts].every(([id, start]) => b.starts.get(id) === start);
}

function totalOf(p: Problem, { starts }: Schedule): number {
  return totalEnd(
    deliveriesOf(p),
    (i) => starts.get(p.stages[i]!.id)!,
    (i) => p.stages[i]!.duration,
  );
}
