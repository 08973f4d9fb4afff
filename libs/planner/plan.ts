import { deliveriesOf, totalEnd } from './deliveries.js';
import { sampleDraws } from './draws.js';
import { oddsOver } from './odds.js';
import type { Certainty, Odds, Problem, Schedule, ScheduleOutcome } from './problem.js';
import { place, schedule } from './schedule.js';

/** From cautious to likely. The cautious plan is not always the best: it may open a window past its close. */
const CERTAINTIES: readonly Certainty[] = [0.9, 0.85, 0.8, 0.7, 0.6, 0.5];

/**
 * The schedule with the best odds among those made at several certainties; equal odds go to the one that is ready
 * first.
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
  },
): { readonly outcome: ScheduleOutcome; readonly odds: Odds | null } {
  const { seed, scenarios, certainties = CERTAINTIES } = options;
  if (certainties.length === 0) throw new RangeError('no certainty to plan at');
  const candidates: Candidate[] = [];
  for (const certainty of certainties) {
    const found = place(p, { certainty, seed });
    if (typeof found !== 'object' || candidates.some((other) => sameStarts(other.schedule, found))) continue;
    candidates.push({ schedule: found, ready: readyOf(p, found) });
  }
  const last = certainties.at(-1)!;
  if (candidates.length === 0) return { outcome: schedule(p, { certainty: last, seed }), odds: null };
  const draws = sampleDraws(p, seed, scenarios);
  const judge = (some: readonly Candidate[], count: number): Judged[] =>
    some.map((candidate) => {
      const found = oddsOver(draws, p, candidate.schedule, { seed, scenarios: count });
      return { ...candidate, odds: found };
    });
  const judged = judge(promising(judge(candidates, Math.ceil(scenarios / 8))), scenarios);
  const best = judged.reduce((a, b) => (isBetter(b, a) ? b : a));
  return { outcome: { status: 'planned', schedule: best.schedule }, odds: best.odds };
}

interface Candidate {
  readonly schedule: Schedule;
  readonly ready: number;
}

interface Judged extends Candidate {
  readonly odds: Odds;
}

/** Those whose odds, after a first look, may still turn out best: within four standard errors. */
function promising(judged: readonly Judged[]): Judged[] {
  const most = Math.max(...judged.map(({ odds }) => odds.probability));
  return judged.filter(
    ({ odds }) => odds.probability + 4 * (odds.standardError + 1 / odds.scenarios) >= most,
  );
}

function isBetter(a: Judged, b: Judged): boolean {
  const more = a.odds.probability - b.odds.probability;
  return more > 0 || (more === 0 && a.ready < b.ready);
}

function sameStarts(a: Schedule, b: Schedule): boolean {
  return [...a.starts].every(([id, start]) => b.starts.get(id) === start);
}

function readyOf(p: Problem, { starts }: Schedule): number {
  return totalEnd(
    deliveriesOf(p),
    (i) => starts.get(p.stages[i]!.id)!,
    (i) => p.stages[i]!.duration,
  );
}
