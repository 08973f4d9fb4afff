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

/**
 * The reads are not one, and jobs move between them, so the order matters. A job between tries is seen by the first
 * read. One that runs at the first read still runs at the second, or rests at the third: it rests for a second at least.
 */
async function isIdle(producer: Producer): Promise<boolean> {
  return !(await someRest(producer)) && !(await someRun(producer)) && !(await someRest(producer));
}

async function someRest(producer: Producer): Promise<boolean> {
  const delayed = await producer.getDelayed();
  return delayed.some(({ attemptsMade }) => attemptsMade > 0);
}

async function someRun(producer: Producer): Promise<boolean> {
  const counts = await producer.getJobCounts('active', 'waiting', 'prioritized');
  return Object.values(counts).some((count) => count > 0);
}
