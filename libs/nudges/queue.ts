import type { Backend, Producer } from './backend.js';
import type { Clock } from './clock.js';
import { alarmId, alarmJob, type NewJob } from './jobs.js';
import { reasonOf, type Log } from './log.js';
import type { WaitingNudge } from './nudge-store.js';
import { reportErrors } from './report-errors.js';
import { withTimeout } from './with-timeout.js';

/** The side of the queue that an app uses after it has stored nudges. No call here rejects. */
export interface NudgeQueue {
  /** Sets alarms for stored nudges. One that is lost, or due beyond the horizon, is set by a later sweep. */
  enqueue(nudges: readonly WaitingNudge[]): Promise<void>;
  /** Takes alarms away. One that is missed rings and finds nothing to do. */
  cancel(nudges: readonly Pick<WaitingNudge, 'id' | 'version'>[]): Promise<void>;
}

export interface QueueParts {
  readonly backend: Backend;
  readonly clock: Clock;
  readonly log: Log;
  /**
   * How far ahead alarms are set, in milliseconds. Later nudges stay in the store until a sweep reaches them: the
   * queue stays small, and a replan that moves next week's nudges does not touch it.
   */
  readonly horizonMs: number;
}

/** Whether the store of the queue answers, and which it is. */
export interface QueueHealth {
  readonly queue: 'up' | 'down';
  readonly backend: Backend['name'];
}

export interface OpenQueue extends NudgeQueue {
  readonly producer: Producer;
  health(): Promise<QueueHealth>;
  /** From here on nothing is queued any more; what comes is left to the next start's sweep. */
  stop(): Promise<void>;
}

const LONGEST_CALL_MS = 3_000;
const HEALTH_MS = 1_000;
/** Alarms are set this many sweeps ahead, so that a failed sweep costs nothing. */
export const SWEEPS_AHEAD = 10;
const BULK = 500;

/** Opens the producing end. */
export function openQueue({ backend, clock, log, horizonMs }: QueueParts): OpenQueue {
  const producer = backend.openProducer();
  reportErrors(producer, 'queue', log, clock);
  let stopping: Promise<void> | undefined;

  return {
    producer,
    async enqueue(nudges) {
      const now = clock.now();
      const soon = nudges.filter(({ dueAt }) => dueAt.getTime() < now.getTime() + horizonMs);
      if (stopping) return;
      try {
        await addJobs(
          producer,
          soon.map((nudge) => alarmJob(nudge, now)),
        );
      } catch (error) {
        log.warn('Nudges could not be queued; the sweep will do it', {
          count: soon.length,
          reason: reasonOf(error),
        });
      }
    },
    async cancel(nudges) {
      if (stopping) return;
      try {
        const removals = nudges.map((nudge) => producer.remove(alarmId(nudge)));
        await withTimeout(LONGEST_CALL_MS, 'remove', Promise.all(removals));
      } catch (error) {
        log.debug('Alarms were left in the queue and will find nothing to do', { reason: reasonOf(error) });
      }
    },
    health: async () => ({ queue: await stateOf(producer), backend: backend.name }),
    stop() {
      stopping ??= closeProducer(producer, log);
      return stopping;
    },
  };
}

/** Adds jobs; those whose id is already there are left as they are. Rejects when the store does not answer. */
export async function addJobs(producer: Producer, jobs: readonly NewJob[]): Promise<void> {
  for (let from = 0; from < jobs.length; from += BULK) {
    await withTimeout(LONGEST_CALL_MS, 'add', producer.addBulk(jobs.slice(from, from + BULK)));
  }
}

async function stateOf(producer: Producer): Promise<'up' | 'down'> {
  try {
    await withTimeout(HEALTH_MS, 'count', producer.getJobCounts('active'));
    return 'up';
  } catch {
    return 'down';
  }
}

async function closeProducer(producer: Producer, log: Log): Promise<void> {
  try {
    await withTimeout(LONGEST_CALL_MS, 'close', producer.close());
  } catch (error) {
    log.warn('The queue did not close in order', { reason: reasonOf(error) });
    await withTimeout(LONGEST_CALL_MS, 'disconnect', producer.disconnect()).catch(() => undefined);
  }
}
