import type { Producer } from './backend.js';
import type { Clock } from './clock.js';
import { alarmId, alarmJob } from './jobs.js';
import type { Log } from './log.js';
import type { NudgeStore, WaitingNudge } from './nudge-store.js';
import { addJobs } from './queue.js';

export interface SweepParts {
  readonly store: NudgeStore;
  readonly producer: Producer;
  readonly clock: Clock;
  readonly log: Log;
  readonly horizonMs: number;
}

/** Rows read by one sweep. Reached only if this many nudges fall due within one horizon, over all workshops. */
const LIMIT = 5_000;

/**
 * Makes the queue agree with the store again: every waiting nudge that is overdue or due within the horizon gets its
 * alarm, and an overdue one whose alarm is set for later rings now. Adding an alarm that is there already changes
 * nothing, so the sweep asks the queue nothing before it adds, and any number of processes may sweep.
 * @returns how many nudges were looked at, and how many of those were overdue
 */
export async function sweepOnce({ store, producer, clock, log, horizonMs }: SweepParts): Promise<SweepCount> {
  const now = clock.now();
  const early = await store.undoEarly(now);
  if (early > 0)
    log.warn('A clock was ahead and has come back: what it told too early comes again', { count: early });
  const waiting = await store.due(LIMIT, new Date(now.getTime() + horizonMs));
  const overdue = waiting.filter(({ dueAt }) => dueAt.getTime() <= now.getTime());
  await addJobs(
    producer,
    waiting.map((nudge) => alarmJob(nudge, now)),
  );
  for (const nudge of overdue) await ringNow(producer, nudge);
  if (waiting.length === LIMIT) {
    log.warn('One sweep could not read all nudges due soon; the rest follow as these are delivered', {
      limit: LIMIT,
    });
  }
  return { waiting: waiting.length, overdue: overdue.length };
}

export interface SweepCount {
  readonly waiting: number;
  readonly overdue: number;
}

async function ringNow(producer: Producer, nudge: WaitingNudge): Promise<void> {
  const job = await producer.getJob(alarmId(nudge));
  if (job === undefined || !(await job.isDelayed())) return;
  try {
    await job.promote();
  } catch (error) {
    // Between the look and the promotion a worker may have taken it, which is as good.
    if (await job.isDelayed()) throw error;
  }
}
