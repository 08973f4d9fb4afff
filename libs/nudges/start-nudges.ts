import { backendFor } from './backend.js';
import type { Channel } from './channels/channel.js';
import type { Clock } from './clock.js';
import { untilIdle } from './idle.js';
import { reasonOf, type Log } from './log.js';
import type { NudgeStore } from './nudge-store.js';
import { processorFor } from './process-job.js';
import { addJobs, openQueue, SWEEPS_AHEAD, type NudgeQueue, type QueueHealth } from './queue.js';
import { sweepOnce, type SweepCount } from './sweep.js';
import { openWorker } from './worker.js';

export interface NudgesOptions {
  readonly store: NudgeStore;
  /** PostgreSQL connection string; the queue lives in its own schema there unless `redisUrl` is given. */
  readonly databaseUrl: string;
  readonly redisUrl?: string | undefined;
  readonly clock: Clock;
  readonly log: Log;
  /** Besides the inbox, which always gets every nudge. */
  readonly channels: readonly Channel[];
  /** Jobs worked on at the same time in this process, at least 1. */
  readonly concurrency: number;
  /** Pause between sweeps in milliseconds. Alarms are set ten of these ahead, so one failed sweep costs nothing. */
  readonly sweepEveryMs: number;
  /** Milliseconds after which a dead worker's jobs are given to another. @defaultValue 10 000 */
  readonly lockMs?: number;
}

export interface Nudges {
  readonly queue: NudgeQueue;
  /** Sweeps now, after any sweep that is under way. Rejects when the store or the queue does not answer. */
  sweep(): Promise<SweepCount>;
  /** Resolves when no job is running, ready to run or between two tries. With a clock moved by hand, sweep first. */
  idle(): Promise<void>;
  health(): Promise<QueueHealth>;
  /** Lets running jobs end, then closes the queue. The store stays open; it belongs to the caller. */
  stop(): Promise<void>;
}

/**
 * Starts delivering: a queue, a worker on it, and the sweep that keeps it in step with the store, at once and then
 * again and again. Any number of processes may do this over the same store.
 *
 * PostgreSQL must answer now, as nothing works without it. Redis need not: nudges are stored, and are queued when it
 * comes back.
 */
export async function startNudges(options: NudgesOptions): Promise<Nudges> {
  const { store, databaseUrl, redisUrl, clock, log, channels, concurrency, sweepEveryMs } = options;
  const { lockMs = 10_000 } = options;
  const backend = backendFor(redisUrl === undefined ? { databaseUrl } : { redisUrl });
  const horizonMs = SWEEPS_AHEAD * sweepEveryMs;
  const queue = openQueue({ backend, clock, log, horizonMs });
  const { producer } = queue;
  const process = processorFor({
    store,
    channels,
    clock,
    log,
    queueJobs: (jobs) => addJobs(producer, jobs),
  });
  const worker = openWorker({ backend, process, clock, log, concurrency, lockMs });
  const ready = Promise.all([producer.waitUntilReady(), worker.running]);
  if (backend.name === 'postgres') {
    await ready.catch(async (error: unknown) => {
      await Promise.all([worker.stop(), queue.stop()]);
      throw error;
    });
  } else {
    ready.catch((error: unknown) => log.error('Nudges are not delivered', { reason: reasonOf(error) }));
  }

  let stopping: Promise<void> | undefined;
  const stop = async (): Promise<void> => {
    await stopSweeping();
    await worker.stop();
    await queue.stop();
  };
  let last: Promise<unknown> = Promise.resolve();
  const sweep = (): Promise<SweepCount> => {
    const run = last.then(() => sweepOnce({ store, producer, clock, log, horizonMs }));
    last = run.catch(() => undefined);
    return run;
  };
  const stopSweeping = repeat(sweepEveryMs, async () => {
    await sweep().catch((error: unknown) => log.warn('A sweep failed', { reason: reasonOf(error) }));
  });
  return {
    queue,
    sweep,
    idle: () => untilIdle(producer),
    health: () => queue.health(),
    stop: () => (stopping ??= stop()),
  };
}

/** Runs the work now and then with a pause after each. @returns a function that ends this and waits for the last */
function repeat(pauseMs: number, work: () => Promise<void>): () => Promise<void> {
  let stopped = false;
  let timer: NodeJS.Timeout | undefined;
  let running: Promise<void>;
  const round = (): void => {
    running = work().then(() => {
      if (!stopped) timer = setTimeout(round, pauseMs);
    });
  };
  round();
  return async () => {
    stopped = true;
    clearTimeout(timer);
    await running;
  };
}
