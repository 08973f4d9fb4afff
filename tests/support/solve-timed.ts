import { ScheduleSearch } from '#planner';
import { projectProblem, stageName } from './project-problem.js';
import { readProjects, type Instance } from './read-projects.js';

const SEED = 1;

/** `optimal` and `infeasible` are proved; `feasible` and `undecided` are what the time left. */
export type ProjectResult =
  | { readonly status: 'optimal' | 'feasible'; readonly starts: Int32Array; readonly makespan: number }
  | { readonly status: 'infeasible' | 'undecided' };

export interface Solved {
  readonly instance: Instance;
  readonly result: ProjectResult;
  readonly ms: number;
}

/** By the search that plans a maker's runs, with hours around the clock, within `seconds`. */
export function solveTimed(instance: Instance, seconds: number): Solved {
  const begun = performance.now();
  const isOver = (): boolean => performance.now() - begun >= 1000 * seconds;
  const result = solved(instance, SEED, Infinity, isOver);
  return { instance, result, ms: performance.now() - begun };
}

function solved(instance: Instance, seed: number, limit: number, stop = (): boolean => false): ProjectResult {
  const search = new ScheduleSearch(projectProblem(instance), { certainty: 0.5, seed, limit, stop });
  while (search.step() && !stop());
  const found = search.schedule()?.starts;
  if (found === undefined) return { status: search.verdict === 'infeasible' ? 'infeasible' : 'undecided' };
  const status = search.verdict === 'optimal' ? 'optimal' : 'feasible';
  const starts = Int32Array.from(instance.dur, (_, i) => found.get(stageName(instance, i))!);
  return { status, starts, makespan: starts.at(-1)! };
}

/** A file of tests/literature/planner, each project solved a little, so that none pays for the compiler later. */
export function warmedUpProjects(file: string): Instance[] {
  const instances = readProjects(new URL(`../../../tests/literature/planner/${file}`, import.meta.url));
  for (const instance of instances) solved(instance, SEED + 1, 200);
  return instances;
}
