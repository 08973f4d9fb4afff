import { solveProject, type ProjectResult } from './solve-project.js';
import { readProjects, type Instance } from './read-projects.js';

const SEED = 1;

export interface Solved {
  readonly instance: Instance;
  readonly result: ProjectResult;
  readonly ms: number;
}

/** By the search that plans a maker's runs, with hours around the clock, within `seconds`. */
export function solveTimed(instance: Instance, seconds: number): Solved {
  const begun = performance.now();
  const isOver = (): boolean => performance.now() - begun >= 1000 * seconds;
  const result = solveProject(instance, { seed: SEED, stop: isOver });
  return { instance, result, ms: performance.now() - begun };
}

/** A file of tests/literature/planner, each project solved a little, so that none pays for the compiler later. */
export function warmedUpProjects(file: string): Instance[] {
  const instances = readProjects(new URL(`../../../tests/literature/planner/${file}`, import.meta.url));
  for (const instance of instances) solveProject(instance, { seed: SEED + 1, limit: 200 });
  return instances;
}
