import type { ReconciledNudges } from '#storage';
import type { Parts } from '../parts.js';

/**
 * Tells the queue what a stored change did to the nudges. Only after the commit: an alarm for a row that was rolled
 * back would ring for nothing. If it fails, the sweep sets the alarms, and one too many rings and finds nothing to do;
 * the maker's request has succeeded either way.
 */
export async function queueAfterCommit(
  { nudges, log }: Parts,
  change: Partial<ReconciledNudges> | undefined,
): Promise<void> {
  if (change === undefined || nudges === undefined) return;
  try {
    await nudges.queue.cancel(change.cancelled ?? []);
    await nudges.queue.enqueue(change.moved ?? []);
  } catch (error) {
    log.warn('Alarms are left to the sweep', {
      reason: error instanceof Error ? error.message : String(error),
    });
  }
}
