import type { Processor } from 'bullmq';
import type { Backend, Consumer, ConsumerSettings } from './backend.js';
import type { Clock } from './clock.js';
import { reasonOf, type Log } from './log.js';
import { reportErrors } from './report-errors.js';
import { withTimeout } from './with-timeout.js';

export interface OpenWorker {
  /** Resolves when the worker takes jobs; rejects when it never will. */
  readonly running: Promise<void>;
  /** Lets running jobs end, within a limit, and closes the worker's connections. */
  stop(): Promise<void>;
}

export interface WorkerParts extends ConsumerSettings {
  readonly backend: Backend;
  readonly process: Processor;
  readonly clock: Clock;
  readonly log: Log;
}

const LONGEST_CLOSE_MS = 10_000;
const LONGEST_DISCONNECT_MS = 1_000;

/** Opens the consuming end, which takes jobs as soon as its store answers. */
export function openWorker({ backend, process, clock, log, ...settings }: WorkerParts): OpenWorker {
  const consumer = backend.openConsumer(process, settings);
  reportErrors(consumer, 'worker', log, clock);
  consumer.on('failed', (job, error) => {
    log.error('A nudge job failed', { job: job?.id, attempt: job?.attemptsMade, reason: error.message });
  });
  const running = consumer.waitUntilReady().then(() => {
    consumer
      .run()
      .catch((error: unknown) => log.error('The nudge worker ended', { reason: reasonOf(error) }));
  });
  return { running, stop: () => close(consumer, log) };
}

async function close(consumer: Consumer, log: Log): Promise<void> {
  try {
    await withTimeout(LONGEST_CLOSE_MS, 'close', consumer.close());
  } catch (error) {
    log.warn('The nudge worker did not close in order', { reason: reasonOf(error) });
    await withTimeout(LONGEST_DISCONNECT_MS, 'disconnect', consumer.disconnect()).catch(() => undefined);
  }
}
