import { createPostgresBackend, createRedisBackend, withBackend } from 'bullmq';
import type { Job, Processor, Queue, Worker } from 'bullmq';

/** Which store the queue lives in. */
export type Target = { readonly databaseUrl: string } | { readonly redisUrl: string };

export interface Producer extends Pick<
  Queue,
  'addBulk' | 'close' | 'disconnect' | 'getDelayed' | 'getJob' | 'getJobCounts' | 'remove' | 'waitUntilReady'
> {
  on(event: 'error', listener: (error: Error) => void): unknown;
}

export interface Consumer extends Pick<Worker, 'close' | 'disconnect' | 'run' | 'waitUntilReady'> {
  on(event: 'error', listener: (error: Error) => void): unknown;
  on(event: 'failed', listener: (job: Job | undefined, error: Error) => void): unknown;
}

export interface ConsumerSettings {
  readonly concurrency: number;
  /** Milliseconds after which the jobs of a dead worker are given to another one. */
  readonly lockMs: number;
}

/** The two ends of the nudge queue over one store. Nothing above this interface knows which store it is. */
export interface Backend {
  readonly name: 'postgres' | 'redis';
  openProducer(): Producer;
  /** The consumer takes no jobs until it is told to run, which it must not be before it is ready. */
  openConsumer(handle: Processor, settings: ConsumerSettings): Consumer;
}

const QUEUE = 'nudges';
const POSTGRES_SCHEMA = 'bullmq';
const REDIS_PREFIX = 'benchtide';
const LONGEST_RECONNECT_PAUSE_MS = 2_000;

/** Opens no connection yet; the producer and the consumer each open their own. */
export function backendFor(target: Target): Backend {
  return 'redisUrl' in target ? redisBackend(target.redisUrl) : postgresBackend(target.databaseUrl);
}

function postgresBackend(connectionString: string): Backend {
  const { Queue, Worker } = withBackend(createPostgresBackend);
  const connection = (max: number) => ({
    connectionString,
    schema: POSTGRES_SCHEMA,
    migrate: true,
    max,
    connectionTimeoutMillis: 5_000,
  });
  return {
    name: 'postgres',
    openProducer: () => new Queue(QUEUE, { connection: connection(2) }),
    openConsumer: (handle, settings) =>
      new Worker(QUEUE, handle, { connection: connection(4), ...workerOptions(settings) }),
  };
}

function redisBackend(url: string): Backend {
  const { Queue, Worker } = withBackend(createRedisBackend);
  // BullMQ's own pause grows to 20 s, which is how late the first nudge after an outage would be.
  const retryStrategy = (times: number) => Math.min(times * 200, LONGEST_RECONNECT_PAUSE_MS);
  // Without the offline queue an add fails at once while Redis is away, instead of holding up the caller.
  // The version check is left to the consumer: failing it mid-connect would spoil the producer for good.
  const producing = {
    url,
    retryStrategy,
    enableOfflineQueue: false,
    maxRetriesPerRequest: 1,
    skipVersionCheck: true,
  };
  const consuming = { url, retryStrategy, maxRetriesPerRequest: null };
  return {
    name: 'redis',
    openProducer: () => new Queue(QUEUE, { connection: producing, prefix: REDIS_PREFIX }),
    openConsumer: (handle, settings) =>
      new Worker(QUEUE, handle, { connection: consuming, prefix: REDIS_PREFIX, ...workerOptions(settings) }),
  };
}

function workerOptions({ concurrency, lockMs }: ConsumerSettings) {
  return {
    // Over PostgreSQL a worker whose first connection fails keeps that failure for good, and when it runs
    // anyway it asks again without pause, so that the process does nothing else any more.
    autorun: false,
    concurrency,
    // After a refused connection; the default of 15 s is how late nudges would be, and a stop would have to wait.
    runRetryDelay: LONGEST_RECONNECT_PAUSE_MS,
    lockDuration: lockMs,
    stalledInterval: Math.ceil(lockMs / 2),
    // The default of 1 would fail an alarm whose worker was killed twice, though nothing is wrong with it.
    maxStalledCount: 20,
  };
}
