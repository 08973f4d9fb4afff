import { minute } from '#units';
import type { OpenInterval } from '#hours';
import { instantOf } from '#hours';
import { odds } from '#planner';
import { paceChance } from '../plan/pace-odds.js';
import { solveRuns, type SolvedRuns } from '../plan/solve-runs.js';
import { assessRuns } from '../assess-runs.js';
import type { Candidate, Situation } from './candidate.js';
import { disturbanceOf } from './disturbance.js';
import { chances } from './paired-gain.js';
import { withChange } from './with-change.js';

/** Scenarios that tell what may help from what does not: in pairs, a standard error of about 2 percentage points. */
const SCENARIOS = 200;
/** So many choose among the schedules of one change: those to choose from are much alike. */
const TO_CHOOSE = 50;

/**
 * The candidates that are worth a full plan, likely best first: each is planned as it would be, with few scenarios and
 * without its windows and reasons, and of those about the same thing the best stays.
 * @param most at most so many
 * @returns them, and how many were looked at: fewer than there are once `stop` of the options says true
 */
export function shortlist(situation: Situation, candidates: readonly Candidate[], most: number): Shortlist {
  const { seed = 1, stop = () => false } = situation.options;
  let tried = 0;
  const scenarios = Math.min(SCENARIOS, situation.options.scenarios ?? SCENARIOS);
  const before = mean(chances(situation.plan, seed, scenarios));
  const best = new Map<string, { readonly candidate: Candidate; readonly worth: number }>();
  for (const candidate of candidates) {
    if (stop()) break;
    tried++;
    const found = quickEvaluate(candidate, situation, seed, scenarios);
    if (found === undefined || found.odds <= before) continue;
    const worth = (found.odds - before) / disturbanceOf(candidate, found.moved).points;
    if (worth > (best.get(candidate.about)?.worth ?? 0)) best.set(candidate.about, { candidate, worth });
  }
  const worthwhile = [...best.values()]
    .sort((a, b) => b.worth - a.worth)
    .slice(0, most)
    .map(({ candidate }) => candidate);
  return { worthwhile, tried };
}

interface Shortlist {
  readonly worthwhile: Candidate[];
  readonly tried: number;
}

function quickEvaluate(
  candidate: Candidate,
  situation: Situation,
  seed: number,
  scenarios: number,
): { readonly odds: number; readonly moved: number } | undefined {
  const input = withChange(situation.input, candidate.change);
  const taken = assessRuns(input);
  if (!taken.ok) return undefined;
  const assessedRuns = taken.value.map(({ assessed }) => assessed);
  const { now, stop } = situation.options;
  const options = { now, seed, scenarios: Math.min(TO_CHOOSE, scenarios), stop };
  const solved = solveRuns(input, assessedRuns, options, hoursWith(candidate, situation));
  const { judged, outcome } = solved;
  if (outcome?.status !== 'planned') return undefined;
  const { onTime } = odds(judged, outcome.schedule, { seed, scenarios });
  return { odds: onTime * paceChance(assessedRuns), moved: movedStages(situation.plan.solved, solved) };
}

/** Looking hours up anew costs more than planning. */
function hoursWith({ change }: Candidate, { open, zone }: Situation): readonly OpenInterval[] {
  if (change.kind !== 'hours') return open;
  const from = instantOf(`${change.date}T${change.added.from}`, zone);
  const to = instantOf(`${change.date}T${change.added.to}`, zone);
  if (from === undefined || to === undefined) return open;
  const joined: { from: typeof from; to: typeof to }[] = [];
  for (const each of [...open, { from, to }].sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last !== undefined && each.from <= last.to) last.to = minute(Math.max(last.to, each.to));
    else joined.push({ ...each });
  }
  return joined;
}

function movedStages(before: SolvedRuns, after: SolvedRuns): number {
  if (before.outcome?.status !== 'planned' || after.outcome?.status !== 'planned') return 0;
  const starts = before.outcome.schedule.starts;
  return [...after.outcome.schedule.starts].filter(([id, start]) => starts.get(id) !== start).length;
}

function mean(values: Float64Array): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}
