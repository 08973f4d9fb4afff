import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { HandClock } from '../../tests/nudges/support/hand-clock.js';
import { neverAnswers, QueueInMemory } from '../../tests/nudges/support/queue-in-memory.js';
import { QuietLog } from '../../tests/nudges/support/quiet-log.js';
import type { WaitingNudge } from './nudge-store.js';
import { openQueue } from './queue.js';

const MINUTE_MS = 60_000;

let store: QueueInMemory;
let clock: HandClock;
let log: QuietLog;
beforeEach(() => {
  vi.useFakeTimers();
  store = new QueueInMemory();
  clock = new HandClock('2026-11-27T18:00:00Z');
  log = new QuietLog();
});
afterEach(() => vi.useRealTimers());

const open = () =>
  openQueue({
    backend: {
      name: 'redis',
      openProducer: () => store.asProducer(),
      openConsumer: () => {
        throw new Error('Nothing here consumes.');
      },
    },
    ...{ clock, log, horizonMs: 10 * MINUTE_MS },
  });
const nudge = (id: string, minutes: number, version = 1): WaitingNudge => ({
  ...{ id, version },
  dueAt: clock.in(minutes),
});
const refused = async (): Promise<never> => Promise.reject(new Error('connection refused'));
const messages = () => log.lines.map(({ level, message, details }) => ({ level, message, ...details }));

describe('alarms', () => {
  it('are set for what is due before the horizon, from the clock that counts', async () => {
    await open().enqueue([
      nudge('past', -3),
      nudge('soon', 4, 2),
      nudge('at-horizon', 10),
      nudge('late', 11),
    ]);
    const set = [...store.jobs].map(([id, { name, data, opts }]) => ({ id, name, data, delay: opts.delay }));
    expect(set).toEqual([
      {
        id: 'nudge-past-v1',
        name: 'deliver',
        data: { id: 'past', version: 1, dueAt: clock.in(-3) },
        delay: 0,
      },
      {
        id: 'nudge-soon-v2',
        name: 'deliver',
        data: { id: 'soon', version: 2, dueAt: clock.in(4) },
        delay: 4 * MINUTE_MS,
      },
    ]);
  });

  it('are not asked for where none is near', async () => {
    const queue = open();
    await queue.enqueue([]);
    await queue.enqueue([nudge('late', 30)]);
    expect(store.bulks).toEqual([]);
  });

  it('are set in steps, so that no call takes too long', async () => {
    await open().enqueue(Array.from({ length: 1_000 }, (_, i) => nudge(String(i), 1)));
    expect(store.bulks).toEqual([500, 500]);
    expect(store.jobs.size).toBe(1_000);
  });

  it('are left to the sweep where the store refuses', async () => {
    store.instead.addBulk = refused;
    await open().enqueue([nudge('a', 1), nudge('b', 2), nudge('late', 30)]);
    expect(messages()).toEqual([
      {
        level: 'warn',
        message: 'Nudges could not be queued; the sweep will do it',
        ...{ count: 2, reason: 'connection refused' },
      },
    ]);
  });

  it('are left to the sweep where the store has not answered after three seconds', async () => {
    store.instead.addBulk = neverAnswers;
    const asked = open().enqueue([nudge('a', 1)]);
    await vi.advanceTimersByTimeAsync(2_999);
    expect(log.lines).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    await asked;
    expect(messages()).toMatchObject([{ level: 'warn', reason: 'add: no answer within 3000 ms' }]);
  });
});

describe('alarms that are taken away', () => {
  it('are gone at the version that was queued', async () => {
    const queue = open();
    const [a, b] = [nudge('a', 1), nudge('b', 2)];
    await queue.enqueue([a, b]);
    await queue.cancel([]);
    await queue.cancel([a, { ...b, version: 7 }]);
    expect([...store.jobs.keys()]).toEqual(['nudge-b-v1']);
  });

  it.each([
    ['refuses', refused, 'connection refused'],
    ['does not answer', neverAnswers, 'remove: no answer within 3000 ms'],
  ])('ring for nothing where the store %s, and hold nobody up', async (_, instead, reason) => {
    store.instead.remove = instead;
    const asked = open().cancel([nudge('a', 1)]);
    await vi.advanceTimersByTimeAsync(3_000);
    await asked;
    expect(messages()).toEqual([
      { level: 'debug', message: 'Alarms were left in the queue and will find nothing to do', reason },
    ]);
  });
});

describe('the health of the queue', () => {
  it('is up while its store answers', async () => {
    expect(await open().health()).toEqual({ queue: 'up', backend: 'redis' });
    expect(vi.getTimerCount()).toBe(0);
  });

  it('is down where it refuses, and where it has not answered within a second', async () => {
    store.instead.getJobCounts = refused;
    const queue = open();
    expect(await queue.health()).toEqual({ queue: 'down', backend: 'redis' });
    store.instead.getJobCounts = neverAnswers;
    const asked = queue.health();
    await vi.advanceTimersByTimeAsync(1_000);
    expect(await asked).toEqual({ queue: 'down', backend: 'redis' });
  });
});

describe('a queue that stops', () => {
  it('takes and removes nothing any more, and closes once', async () => {
    const queue = open();
    const kept = nudge('kept', 1);
    await queue.enqueue([kept]);
    await Promise.all([queue.stop(), queue.stop()]);
    await queue.enqueue([nudge('more', 1)]);
    await queue.cancel([kept]);
    expect([...store.jobs.keys()]).toEqual(['nudge-kept-v1']);
    expect(store.closings).toEqual(['close']);
    expect(log.lines).toEqual([]);
  });

  it('lets go of a store that does not let it close, and of one that does not even let it go', async () => {
    store.instead.close = neverAnswers;
    store.instead.disconnect = neverAnswers;
    const stopping = open().stop();
    await vi.advanceTimersByTimeAsync(3_000);
    expect(store.closings).toEqual(['close', 'disconnect']);
    await vi.advanceTimersByTimeAsync(3_000);
    await stopping;
    expect(messages()).toEqual([
      {
        level: 'warn',
        message: 'The queue did not close in order',
        reason: 'close: no answer within 3000 ms',
      },
    ]);
  });
});

describe('trouble with the store of the queue', () => {
  it('is told once a minute for each cause', () => {
    open();
    const fail = (reason: string) => {
      store.fail(new Error(reason));
    };
    fail('refused');
    clock.advance(0.5);
    fail('refused');
    fail('reset');
    clock.advance(0.499);
    fail('refused');
    clock.advance(0.001);
    fail('refused');
    expect(messages()).toEqual(
      ['refused', 'reset', 'refused'].map((reason) => ({
        ...{ level: 'warn', message: 'Trouble with the nudge queue', reason },
      })),
    );
  });
});
