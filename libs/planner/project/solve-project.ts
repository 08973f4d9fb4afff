import { seededRandom, type Random } from '#units';
import { LearningSearch } from '../learning/learning-search.js';
import type { Propagator } from '../learning/propagator.js';
import type { Trail } from '../learning/trail.js';
import { Best } from './best.js';
import { breedLists } from './breed-lists.js';
import { isPlain, ListSchedules } from './list-schedules.js';
import { energyBound } from './energy-bound.js';
import { tighten, type Distances } from './longest-paths.js';
import { distancesOf, guideOf, modelOf, type Model } from './model.js';
import { Neighbourhoods } from './neighbourhoods.js';
import type { Project, ProjectOptions, ProjectResult } from './project.js';
import { TimeTable } from './time-table.js';

/** Conflicts of the first stretch of the complete search, which solves what is small, and how stretches grow. */
const STRETCH = 500;
const GROWTH = 1.1;

/** Children without improvement after which breeding has done its part. */
const PATIENCE = 2000;

/** The least and the most that neighbourhoods may take of what the complete search takes. */
const LEAST_SHARE = 1;
const MOST_SHARE = 4;

/** Start times that keep all lags and resources and end as early as the limit lets them, with what is proved of it. */
export function solveProject(project: Project, options: ProjectOptions): ProjectResult {
  const { seed, limit, stop = () => false, onImproved = () => {} } = options;
  const distances = fitsAlone(project) ? distancesOf(project) : null;
  if (distances === null) return { status: 'infeasible', lowerBound: 0 };
  const earliest = energyBound(project, distances);
  if (!tighten(distances, 0, project.dur.length - 1, earliest))
    return { status: 'infeasible', lowerBound: earliest };
  const horizon = horizonOf(project);
  const model = modelOf(project, distances, horizon);
  if (model === null) return { status: 'infeasible', lowerBound: horizon };
  const best = new Best(onImproved);
  const isProved = search({ project, distances, model, best, stop, random: seededRandom(seed) }, limit);
  const { starts, makespan } = best;
  const { lowerBound } = model;
  if (starts === null) return { status: isProved ? 'infeasible' : 'undecided', lowerBound };
  if (isProved) return { status: 'optimal', starts, makespan, lowerBound: makespan };
  return { status: 'feasible', starts, makespan, lowerBound };
}

interface Task {
  readonly project: Project;
  readonly distances: Distances;
  readonly model: Model;
  readonly best: Best;
  readonly stop: () => boolean;
  readonly random: Random;
}

/**
 * The complete search by turns with what finds good schedules sooner: at first breeding, where there are no maximum
 * lags, then neighbourhoods, which get more the more they find. @returns whether nothing shorter than the best exists
 */
function search(task: Task, limit: ProjectOptions['limit']): boolean {
  const { project, model, best, stop, random } = task;
  const { lowerBound, horizon } = model;
  const watch = (trail: Trail): Propagator[] => [new TimeTable(trail, project, horizon)];
  const complete = new LearningSearch({ ...model, watch }, random);
  const neighbourhoods = new Neighbourhoods(project, model, random);
  let left = limit.conflicts ?? Infinity;
  let share = 1;
  for (let stretch = STRETCH; ; stretch *= GROWTH) {
    const end = complete.conflicts + Math.min(stretch, left);
    left -= end - complete.conflicts;
    for (let outcome = ''; outcome !== 'limit';) {
      if (best.starts !== null) {
        complete.follow(guideOf(model, best.starts));
        complete.require(2 * model.starts - 1, 1 - best.makespan);
      }
      outcome = complete.run(end - complete.conflicts, stop);
      if (outcome === 'exhausted') return true;
      if (outcome === 'solution') best.improve(complete.solution().subarray(0, model.starts));
      if (best.makespan === lowerBound) return true;
    }
    if (left <= 0 || stop()) return false;
    if (stretch === STRETCH) breed(task);
    const before = best.makespan;
    if (best.starts !== null) left -= neighbourhoods.improve(best, Math.min(share * stretch, left), stop);
    share = best.makespan < before ? Math.min(2 * share, MOST_SHARE) : Math.max(0.7 * share, LEAST_SHARE);
    if (best.makespan === lowerBound) return true;
  }
}

function breed({ project, distances, model, best, stop, random }: Task): void {
  if (!isPlain(project, distances)) return;
  const { horizon, lowerBound } = model;
  const lists = new ListSchedules(project, distances, horizon);
  breedLists(lists, best, random, { patience: PATIENCE, lowerBound, stop });
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
