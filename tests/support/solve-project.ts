import { ScheduleSearch } from '#planner';
import type { Project } from './project.js';
import { projectProblem, stageName } from './project-problem.js';

/** `optimal` and `infeasible` are proved; `feasible` and `undecided` are what the time left. */
export type ProjectResult =
  | { readonly status: 'optimal' | 'feasible'; readonly starts: Int32Array; readonly makespan: number }
  | { readonly status: 'infeasible' | 'undecided' };

/** By the search that plans a maker's runs, with hours around the clock. @param options as for `schedule` */
export function solveProject(
  project: Project,
  options: { readonly seed: number; readonly limit?: number; readonly stop?: () => boolean },
): ProjectResult {
  const search = new ScheduleSearch(projectProblem(project), { limit: Infinity, ...options, certainty: 0.5 });
  while (search.step());
  const found = search.schedule()?.starts;
  if (found === undefined) return { status: search.verdict === 'infeasible' ? 'infeasible' : 'undecided' };
  const status = search.verdict === 'optimal' ? 'optimal' : 'feasible';
  const starts = Int32Array.from(project.dur, (_, i) => found.get(stageName(project, i))!);
  return { status, starts, makespan: starts.at(-1)! };
}
