import type { RunView } from '#contract';
import type { PlanRevision, Repositories, RunHead, StoredRun } from '#storage';
import { ApiProblem, notFound } from '../problems/api-problem.js';

/** @throws ApiProblem 404 when the workshop has no such run */
export async function findRun(
  repositories: Repositories,
  workshopId: string,
  id: string,
): Promise<StoredRun> {
  const run = await repositories.runs.get(workshopId, id);
  if (run === null) throw notFound('run');
  return run;
}

/** A run that can still be planned. @throws ApiProblem 404 without such a run, 409 where it was given up */
export async function findRunToPlan(
  repositories: Repositories,
  workshopId: string,
  id: string,
): Promise<StoredRun> {
  const run = await findRun(repositories, workshopId, id);
  if (run.state === 'abandoned') throw new ApiProblem(409, 'run-abandoned', { says: 'run-abandoned' });
  return run;
}

/** The same as `findRun`, without what the run is made from. */
export async function findHead(repositories: Repositories, workshopId: string, id: string): Promise<RunHead> {
  const run = await repositories.runs.head(workshopId, id);
  if (run === null) throw notFound('run');
  return run;
}

/** The latest plan of a run. @throws ApiProblem 404 when the workshop has no such run */
export async function findPlan(
  repositories: Repositories,
  workshopId: string,
  id: string,
): Promise<PlanRevision> {
  const run = await findHead(repositories, workshopId, id);
  const plan = await repositories.plans.latest(workshopId, run.id);
  if (plan === null) throw notFound('plan');
  return plan;
}

/** A run as it is shown. */
export function shownRun({ id, key, version, state, order, createdAt, updatedAt }: RunHead): RunView {
  return {
    id,
    key,
    version,
    state,
    order,
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
  };
}
