import { solveProject, type ProjectResult } from '#planner';
import { readProjects, type Instance } from './read-projects.js';

const SEED = 1;

export interface Solved {
  readonly instance: Instance;
  readonly result: ProjectResult;
  readonly ms: number;
}

/** By the project search, within `seconds`. */
export function solveTimed(instance: Instance, seconds: number): Solved {
  const begun = performance.now();
  const stop = (): boolean => performance.now() - begun >= 1000 * seconds;
  const result = solveProject(instance, { seed: SEED, limit: {}, stop });
  return { instance, result, ms: performance.now() - begun };
}

/** A file of tests/literature/planner, each project solved a little, so that none pays for the compiler later. */
export function warmedUpProjects(file: string): Instance[] {
  const instances = readProjects(new URL(`../../../tests/literature/planner/${file}`, import.meta.url));
  for (const instance of instances) solveProject(instance, { seed: SEED + 1, limit: { conflicts: 200 } });
  return instances;
}
