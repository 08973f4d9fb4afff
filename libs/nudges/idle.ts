import { setTimeout as pause } from 'node:timers/promises';
import type { Producer } from './backend.js';
import type { Clock } from './clock.js';

const POLL_MS = 20;

/**
 * Waits until the queue holds no job that is due by the given clock: none running, none ready to run, and none that
 * waits for a retry of something already due.
 */
export async function untilIdle(producer: Producer, clock: Clock): Promise<void> {
  while (!(await isIdle(producer, clock))) await pause(POLL_MS);
}

async function isIdle(producer: Producer, clock: Clock): Promise<boolean> {
  const counts = await producer.getJobCounts('active', 'waiting', 'prioritized');
  if (Object.values(counts).some((count) => count > 0)) return false;
  const now = clock.now().getTime();
  const delayed = await producer.getDelayed();
  return !delayed.some((job) => dueTime(job.data) <= now);
}

/** Jobs without a due time of their own follow from something that has happened, so they are always due. */
function dueTime(data: unknown): number {
  if (typeof data !== 'object' || data === null || !('dueAt' in data)) return Number.NEGATIVE_INFINITY;
  return Date.parse(String(data.dueAt));
}
