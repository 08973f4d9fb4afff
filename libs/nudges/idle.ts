import { setTimeout as pause } from 'node:timers/promises';
import type { Producer } from './backend.js';

const POLL_MS = 20;

/**
 * Waits until the queue has nothing to do now: no job is running, ready to run, or between two tries. Alarms set for
 * later do not count, nor do those of moved or cancelled nudges, which lie in the queue until their old time.
 */
export async function untilIdle(producer: Producer): Promise<void> {
  while (!(await isIdle(producer))) await pause(POLL_MS);
}

async function isIdle(producer: Producer): Promise<boolean> {
  if (await isBusy(producer)) return false;
  const delayed = await producer.getDelayed();
  if (delayed.some(({ attemptsMade }) => attemptsMade > 0)) return false;
  // The two reads are not one: a job whose pause ended in between was in neither.
  return !(await isBusy(producer));
}

async function isBusy(producer: Producer): Promise<boolean> {
  const counts = await producer.getJobCounts('active', 'waiting', 'prioritized');
  return Object.values(counts).some((count) => count > 0);
}
