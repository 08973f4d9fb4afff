import type { Processor } from 'bullmq';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { byHand, ConsumerByHand } from '../../tests/nudges/support/consumer-by-hand.js';
import { HandClock } from '../../tests/nudges/support/hand-clock.js';
import { MemoryStore } from '../../tests/nudges/support/memory-store.js';
import { QueueInMemory } from '../../tests/nudges/support/queue-in-memory.js';
import { QuietLog } from '../../tests/nudges/support/quiet-log.js';
import type { Backend, Target } from './backend.js';
import { openNudgeQueue } from './open-nudge-queue.js';
import { startNudges } from './start-nudges.js';

/** The two ends that a test gave out, instead of those over a real store. */
const ends = vi.hoisted((): { open: (target: Target) => Backend } => ({
  open: () => {
    throw new Error('No test gave any out.');
  },
}));
vi.mock('./backend.js', () => ({ backendFor: (target: Target) => ends.open(target) }));

const MINUTE_MS = 60_000;
const databaseUrl = 'postgresql://one/database';
const redisUrl = 'redis://another';

let queue: QueueInMemory;
let consumer: ConsumerByHand;
let store: MemoryStore;
let clock: HandClock;
let log: QuietLog;
let targets: Target[];
let consumers: { handle: Processor; settings: unknown }[];
beforeEach(() => {
  vi.useFakeTimers();
  [queue, consumer] = [new QueueInMemory(), new ConsumerByHand()];
  [store, clock, log] = [new MemoryStore(), new HandClock('2026-11-27T18:00:00Z'), new QuietLog()];
  [targets, consumers] = [[], []];
  ends.open = (target) => {
    targets.push(target);
    return {
      name: 'redisUrl' in target ? 'redis' : 'postgres',
      openProducer: () => queue.asProducer(),
      openConsumer: (handle, settings) => {
        consumers.push({ handle, settings });
        return consumer;
      },
    };
  };
});
afterEach(() => vi.useRealTimers());

const bell = { name: 'bell', send: async () => undefined };
const start = (over: { redisUrl?: string; lockMs?: number } = {}) =>
  startNudges({
    ...{ store, databaseUrl, clock, log, channels: [bell], concurrency: 3, sweepEveryMs: MINUTE_MS },
    ...over,
  });
const started = () => {
  consumer.ready.resolve();
  return start();
};
const lines = () => log.lines.map(({ level, message, details }) => ({ level, message, ...details }));

describe('starting to deliver', () => {
  it('takes the queue of the database unless there is a Redis', async () => {
    consumer.ready.resolve();
    const one = await start();
    const other = await start({ redisUrl, lockMs: 2_000 });
    expect(targets).toEqual([{ databaseUrl }, { redisUrl }]);
    expect(consumers.map(({ settings }) => settings)).toEqual([
      { concurrency: 3, lockMs: 10_000 },
      { concurrency: 3, lockMs: 2_000 },
    ]);
    expect(await one.health()).toEqual({ queue: 'up', backend: 'postgres' });
    expect(await other.health()).toEqual({ queue: 'up', backend: 'redis' });
  });

  it('fails without PostgreSQL, and leaves nothing open', async () => {
    queue.instead.waitUntilReady = () => Promise.reject(new Error('connection refused'));
    await expect(started()).rejects.toThrow('connection refused');
    expect([queue.closings, consumer.calls]).toEqual([['close'], ['run', 'close']]);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('waits for a Redis that is away, and says if it never will answer', async () => {
    await start({ redisUrl });
    expect(consumer.calls).toEqual([]);
    consumer.ready.reject(new Error('too old'));
    await vi.advanceTimersByTimeAsync(0);
    expect(lines()).toEqual([{ level: 'error', message: 'Nudges are not delivered', reason: 'too old' }]);
  });

  it('delivers what its queue brings and hands it on to each channel', async () => {
    await started();
    const { id, version, dueAt } = store.add(clock.now());
    const job = { name: 'deliver', data: { id, version, dueAt: dueAt.toISOString() } };
    await consumers[0]?.handle(job as never, 'token');
    expect(store.delivered.map((nudge) => nudge.id)).toEqual([id]);
    expect([...queue.jobs.keys()]).toContain(`send-bell-${id}-1`);
  });
});

describe('the sweeps', () => {
  const sweeps: Date[] = [];
  beforeEach(() => {
    sweeps.length = 0;
    store.undoEarly = async () => {
      sweeps.push(new Date(Date.now()));
      return 0;
    };
  });

  it('come at once, and again after each pause, ten pauses ahead', async () => {
    const [in9, in10] = [store.add(clock.in(9)), store.add(clock.in(10))];
    const nudges = await started();
    await vi.advanceTimersByTimeAsync(MINUTE_MS - 1);
    expect(sweeps).toHaveLength(1);
    expect([...queue.jobs.keys()]).toEqual([`nudge-${in9.id}-v1`]);
    await vi.advanceTimersByTimeAsync(1);
    expect(sweeps).toHaveLength(2);
    clock.advance(1);
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    expect([...queue.jobs.keys()]).toEqual([`nudge-${in9.id}-v1`, `nudge-${in10.id}-v1`]);
    await nudges.stop();
  });

  it('go on after one that failed, and say so', async () => {
    store.due = () => Promise.reject(new Error('store away'));
    await started();
    await vi.advanceTimersByTimeAsync(MINUTE_MS);
    const failed = { level: 'warn', message: 'A sweep failed', reason: 'store away' };
    expect(lines()).toEqual([failed, failed]);
  });

  it('come one after the other: one that is asked for waits for the one under way', async () => {
    const held = byHand();
    let under = 0;
    let most = 0;
    store.due = async () => {
      most = Math.max(most, (under += 1));
      await held.promise;
      under -= 1;
      return [];
    };
    const nudges = await started();
    const asked = [nudges.sweep(), nudges.sweep()];
    await vi.advanceTimersByTimeAsync(10);
    held.resolve();
    expect(await Promise.all(asked)).toEqual([
      { waiting: 0, overdue: 0 },
      { waiting: 0, overdue: 0 },
    ]);
    expect([most, sweeps.length]).toEqual([1, 3]);
  });

  it('tell whoever asked for one that it failed, and come again for the next', async () => {
    const nudges = await started();
    store.due = () => Promise.reject(new Error('store away'));
    await expect(nudges.sweep()).rejects.toThrow('store away');
    store.due = async () => [];
    await expect(nudges.sweep()).resolves.toEqual({ waiting: 0, overdue: 0 });
  });

  it('end with the last one done, before the worker and then the queue close, once', async () => {
    const held = byHand();
    store.due = async () => {
      await held.promise;
      return [];
    };
    const nudges = await started();
    const order: string[] = [];
    consumer.close = async () => void order.push('worker');
    queue.close = async () => void order.push('queue');
    const stopping = Promise.all([nudges.stop(), nudges.stop()]);
    await vi.advanceTimersByTimeAsync(10);
    expect(order).toEqual([]);
    held.resolve();
    await stopping;
    expect(order).toEqual(['worker', 'queue']);
    await vi.advanceTimersByTimeAsync(10 * MINUTE_MS);
    expect(sweeps).toHaveLength(1);
  });

  it('end between two of them as well', async () => {
    const nudges = await started();
    await vi.advanceTimersByTimeAsync(10);
    await nudges.stop();
    expect(vi.getTimerCount()).toBe(0);
  });
});

describe('the queue alone', () => {
  const open = (over: { redisUrl?: string } = {}) =>
    openNudgeQueue({ databaseUrl, clock, log, sweepEveryMs: MINUTE_MS, ...over });

  it('sets the alarms that the workers’ sweeps reach, in the store that they look at', async () => {
    const alone = open();
    const [in9, in10] = [store.add(clock.in(9.99)), store.add(clock.in(10))];
    await alone.queue.enqueue([in9, in10]);
    expect([...queue.jobs.keys()]).toEqual([`nudge-${in9.id}-v1`]);
    open({ redisUrl });
    expect(targets).toEqual([{ databaseUrl }, { redisUrl }]);
    expect([consumers, log.lines]).toEqual([[], []]);
    expect(await alone.health()).toEqual({ queue: 'up', backend: 'postgres' });
    await alone.stop();
    expect(queue.closings).toEqual(['close']);
  });

  it('goes on without a store that does not answer, and says so', async () => {
    queue.instead.waitUntilReady = () => Promise.reject(new Error('connection refused'));
    open();
    await vi.advanceTimersByTimeAsync(0);
    expect(lines()).toEqual([
      {
        level: 'warn',
        message: 'The nudge queue does not answer; workers will set alarms by their sweep',
        reason: 'connection refused',
      },
    ]);
  });
});
