import type { ReconciledNudges } from '#storage';
import type { Services } from '../services.js';

/**
 * Tells the queue what a stored change did to the nudges. Only after the commit: an alarm for a row that was rolled
 * back would ring for nothing. A queue that does not answer is no error here: the sweep sets the alarms.
 */
export async function publishNudges(
  { nudges }: Services,
  change: Partial<ReconciledNudges> | undefined,
): Promise<void> {
  await nudges.queue.cancel(change?.cancelled ?? []);
  await nudges.queue.enqueue(change?.moved ?? []);
}
