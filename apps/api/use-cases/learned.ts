import type { RunTeachings } from '#contract';
import { learnedFrom, teachingsOf, type LogLine, type RunsInput } from '#runs';
import type { Repositories } from '#storage';

/**
 * What all runs but one have logged teaches, also those that were given up: what they saw teaches all the same.
 * @param butRun null: none is left out
 */
export async function teachingsIn(
  tx: Repositories,
  workshopId: string,
  butRun: string | null,
): Promise<RunTeachings[]> {
  const workshop = await tx.workshops.get(workshopId);
  if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
  const logs = new Map<string, LogLine[]>();
  for (const { runId, id, entry } of await tx.log.list(workshopId)) {
    const log = logs.get(runId) ?? [];
    logs.set(runId, log);
    log.push({ id, entry });
  }
  return (await tx.runs.list(workshopId)).flatMap(({ id, order, snapshot }) => {
    const log = logs.get(id);
    return id === butRun || log === undefined
      ? []
      : [teachingsOf({ order, ...snapshot, log }, workshop.facts).teachings];
  });
}

/** The same as input has it. */
export async function learnedIn(
  tx: Repositories,
  workshopId: string,
  butRun: string | null,
): Promise<Pick<RunsInput, 'learned' | 'teachings'>> {
  const teachings = await teachingsIn(tx, workshopId, butRun);
  return { learned: learnedFrom(teachings), teachings };
}
