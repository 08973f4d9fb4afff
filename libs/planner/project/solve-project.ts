import { seededRandom } from '#units';
import { LearningSearch } from '../learning/learning-search.js';
import { distancesOf, modelOf } from './model.js';
import type { Propagator } from '../learning/propagator.js';
import type { Trail } from '../learning/trail.js';
import { TimeTable } from './time-table.js';
import type { Project, ProjectOptions, ProjectResult } from './project.js';

/** Start times that keep all lags and resources and end as early as the limit lets them, with what is proved of it. */
export function solveProject(project: Project, options: ProjectOptions): ProjectResult {
  const { seed, limit, stop = () => false, onImproved } = options;
  const distances = distancesOf(project);
  if (distances === null || !fitsAlone(project)) return { status: 'infeasible', lowerBound: 0 };
  const horizon = horizonOf(project);
  const model = modelOf(project, distances, horizon);
  if (model === null) return { status: 'infeasible', lowerBound: horizon };
  const { lowerBound } = model;
  const watch = (trail: Trail): Propagator[] => [new TimeTable(trail, project, horizon)];
  const search = new LearningSearch({ ...model, watch }, seededRandom(seed));
  const sink = 2 * (model.starts - 1);
  const total = limit.conflicts ?? Infinity;
  let best: Int32Array | null = null;
  for (;;) {
    const outcome = search.run(total - search.conflicts, stop);
    if (outcome === 'solution') {
      const values = search.solution();
      best = values.slice(0, model.starts);
      search.follow(values);
      const makespan = best.at(-1)!;
      onImproved?.(makespan, best);
      if (makespan === lowerBound) return { status: 'optimal', starts: best, makespan, lowerBound };
      search.require(sink + 1, 1 - makespan);
      continue;
    }
    if (best === null) return { status: outcome === 'exhausted' ? 'infeasible' : 'undecided', lowerBound };
    const makespan = best.at(-1)!;
    if (outcome === 'limit') return { status: 'feasible', starts: best, makespan, lowerBound };
    return { status: 'optimal', starts: best, makespan, lowerBound: makespan };
  }
}

function fitsAlone({ dur, cap, req }: Project): boolean {
  return dur.every((d, i) => d === 0 || cap.every((capacity, r) => req[i]![r]! <= capacity));
}

/** If there is a schedule, there is one that ends by then: no activity need wait longer than the longest lag. */
function horizonOf({ dur, lags }: Project): number {
  const longest = [...dur];
  for (const [i, , w] of lags) longest[i] = Math.max(longest[i]!, w);
  return longest.reduce((sum, d) => sum + d, 0);
}
