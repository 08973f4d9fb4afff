import { rulesVersion } from '#clocks';
import type { RunTeachings, WorkshopFacts } from '#contract';
import type { Issue } from '#units';
import { clocksOf } from '../clocks/forecast-clocks.js';
import type { PastRun } from '../input/input.js';
import { withoutParts, workingsOfPast } from '../input/resolve-run.js';
import { foldLog, underEntries } from '../log/fold-log.js';
import { runTeachings } from './run-teachings.js';

/** Counts up when a run would teach something else by this code, other than by the clocks' rules and states. */
const METHOD = 4;

/**
 * What one run teaches, from its own log and what it was made of. It is forecast for the room of its time: what the room
 * did is no pace of the workshop's.
 * @param workshop for its room, where the run has none of its own
 * @returns empty lists for a run that teaches nothing; issues for entries that cannot be true of it, which teach nothing,
 *   with paths from the root of its log
 */
export function teachingsOf(
  past: PastRun,
  workshop: WorkshopFacts,
): { readonly teachings: RunTeachings; readonly issues: readonly Issue[] } {
  const then = past.room === undefined ? workshop : { ...workshop, room: past.room };
  const run = workingsOfPast(past, then);
  const clocks = clocksOf(run, then);
  const { progress, issues } = foldLog(run, past.log);
  return {
    teachings: runTeachings({ run: withoutParts(run, progress.dropped), progress, clocks }),
    issues: underEntries([], issues),
  };
}

/**
 * Names all that the teachings of a run depend on besides its own log and what it was made of: what was kept under another
 * name is to be worked out anew.
 * @param room of the run's time; absent: it has none of its own, and the workshop's counts
 */
export function teachingsBasis(workshop: WorkshopFacts, room: WorkshopFacts['room'] = workshop.room): string {
  const { temperatureC, humidityPercent, air } = room;
  return `${String(METHOD)}:${rulesVersion()}:${String(temperatureC)}:${String(humidityPercent)}:${air}`;
}
