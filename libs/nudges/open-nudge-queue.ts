import { backendFor } from './backend.js';
import { reasonOf } from './log.js';
import { openQueue, SWEEPS_AHEAD, type NudgeQueue, type QueueHealth } from './queue.js';
import type { NudgesOptions } from './start-nudges.js';

/** The queue as seen by a process that delivers nothing itself. */
export interface QueueAlone {
  readonly queue: NudgeQueue;
  health(): Promise<QueueHealth>;
  /** Closes the queue. What comes later is left to the sweep of the workers. */
  stop(): Promise<void>;
}

/**
 * Opens the queue without a worker on it: for a process that stores nudges which another one delivers. Without its
 * word that one would hear of a nudge at its next sweep only, up to `sweepEveryMs` late.
 *
 * Neither store need answer now: what cannot be queued is left to the workers' sweep.
 */
export function openNudgeQueue(
  options: Pick<NudgesOptions, 'databaseUrl' | 'redisUrl' | 'clock' | 'log' | 'sweepEveryMs'>,
): QueueAlone {
  const { databaseUrl, redisUrl, clock, log, sweepEveryMs } = options;
  const backend = backendFor(redisUrl === undefined ? { databaseUrl } : { redisUrl });
  const queue = openQueue({ backend, clock, log, horizonMs: SWEEPS_AHEAD * sweepEveryMs });
  queue.producer.waitUntilReady().catch((error: unknown) => {
    log.warn('The nudge queue does not answer; workers will set alarms by their sweep', {
      reason: reasonOf(error),
    });
  });
  return { queue, health: () => queue.health(), stop: () => queue.stop() };
}
