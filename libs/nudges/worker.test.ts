import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { byHand, ConsumerByHand } from '../../tests/nudges/support/consumer-by-hand.js';
import { HandClock } from '../../tests/nudges/support/hand-clock.js';
import { neverAnswers } from '../../tests/nudges/support/queue-in-memory.js';
import { QuietLog } from '../../tests/nudges/support/quiet-log.js';
import { openWorker } from './worker.js';

let consumer: ConsumerByHand;
let log: QuietLog;
const settings: unknown[] = [];
beforeEach(() => {
  vi.useFakeTimers();
  consumer = new ConsumerByHand();
  log = new QuietLog();
  settings.length = 0;
});
afterEach(() => vi.useRealTimers());

const open = () =>
  openWorker({
    backend: {
      name: 'postgres',
      openProducer: () => {
        throw new Error('Nothing here produces.');
      },
      openConsumer: (_, given) => {
        settings.push(given);
        return consumer;
      },
    },
    process: async () => undefined,
    ...{ clock: new HandClock('2026-11-27T18:00:00Z'), log, concurrency: 3, lockMs: 2_000 },
  });
const lines = () => log.lines.map(({ level, message, details }) => ({ level, message, ...details }));

describe('a worker', () => {
  it('takes jobs only once its store answers', async () => {
    const { running } = open();
    expect(settings).toEqual([{ concurrency: 3, lockMs: 2_000 }]);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(consumer.calls).toEqual([]);
    consumer.ready.resolve();
    await running;
    expect(consumer.calls).toEqual(['run']);
  });

  it('never takes any when its store never will', async () => {
    const { running } = open();
    consumer.ready.reject(new Error('connection refused'));
    await expect(running).rejects.toThrow('connection refused');
    expect(consumer.calls).toEqual([]);
  });

  it('says that it ended when it should not have', async () => {
    const { running } = open();
    consumer.ready.resolve();
    await running;
    consumer.running.reject(new Error('relation is gone'));
    await vi.advanceTimersByTimeAsync(0);
    expect(lines()).toEqual([
      { level: 'error', message: 'The nudge worker ended', reason: 'relation is gone' },
    ]);
  });

  it('tells of each job that fails, of which and at which try', () => {
    open();
    consumer.fail({ id: 'nudge-a-v1', attemptsMade: 2 }, new Error('store away'));
    consumer.fail(undefined, new Error('stalled'));
    const message = 'A nudge job failed';
    expect(lines()).toEqual([
      { level: 'error', message, job: 'nudge-a-v1', attempt: 2, reason: 'store away' },
      { level: 'error', message, job: undefined, attempt: undefined, reason: 'stalled' },
    ]);
  });

  it('outlives trouble with its store, and tells of it', () => {
    open();
    consumer.lose(new Error('connection reset'));
    expect(lines()).toEqual([
      { level: 'warn', message: 'Trouble with the nudge worker', reason: 'connection reset' },
    ]);
  });
});

describe('a worker that stops', () => {
  it('lets running jobs end, for up to ten seconds', async () => {
    const closed = byHand();
    consumer.close = () => closed.promise;
    let stopped = false;
    const stopping = open()
      .stop()
      .then(() => (stopped = true));
    await vi.advanceTimersByTimeAsync(9_999);
    expect(stopped).toBe(false);
    closed.resolve();
    await stopping;
    expect([consumer.calls, log.lines]).toEqual([[], []]);
  });

  it('lets go of a store that does not answer', async () => {
    consumer.close = neverAnswers;
    const stopping = open().stop();
    await vi.advanceTimersByTimeAsync(10_000);
    await stopping;
    expect(consumer.calls).toEqual(['disconnect']);
    expect(lines()).toEqual([
      {
        level: 'warn',
        message: 'The nudge worker did not close in order',
        reason: 'close: no answer within 10000 ms',
      },
    ]);
  });

  it('ends even if the store does not let it go', async () => {
    consumer.close = neverAnswers;
    consumer.disconnect = neverAnswers;
    const stopping = open().stop();
    await vi.advanceTimersByTimeAsync(11_000);
    await expect(stopping).resolves.toBeUndefined();
  });
});
