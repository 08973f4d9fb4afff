import type { RunTeachings } from '#contract';
import { teachingsBasis, type RunsInput } from '#runs';
import type { StoredRun } from '#storage';
import type { Compute } from '../compute/compute.js';

/** What a run teaches, and what that rests on besides its log. */
export interface RunTaught {
  readonly teachings: RunTeachings;
  readonly basis: string;
}

/** Works out what a run teaches, beside the event loop. @param input of that run alone, with its whole log */
export async function taughtBy(
  compute: Compute,
  { workshopId, order, snapshot }: StoredRun,
  { workshop, log }: Pick<RunsInput, 'workshop' | 'log'>,
): Promise<RunTaught> {
  const lines = log.map(({ id, entry }) => ({ id, entry }));
  const task = { past: [{ order, ...snapshot, log: lines }], facts: workshop };
  const [teachings] = await compute.run('teach', task, { workshopId });
  if (teachings === undefined) throw new Error('nothing was worked out');
  return { teachings, basis: teachingsBasis(workshop, snapshot.room) };
}
