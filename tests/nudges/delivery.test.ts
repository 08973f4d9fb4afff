import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { instantOf } from '#hours';
import { epochMs } from '#units';
import { startNudges, type Channel, type DeliveredNudge, type Nudges } from '#nudges';
import { testDatabase } from '../support/database.js';
import { HandClock } from './support/hand-clock.js';
import { MemoryStore } from './support/memory-store.js';
import { openQueueHomes } from './support/queue-homes.js';
import { QuietLog } from './support/quiet-log.js';

const database = await testDatabase();
const homes = await openQueueHomes(database, 1);
afterAll(async () => {
  await Promise.all(homes.map((home) => home.stop()));
  await database.drop();
});

const HOUR = 60;

describe.each(homes)('nudges over $name', (home) => {
  let store: MemoryStore;
  let clock: HandClock;
  let log: QuietLog;
  let started: Nudges[];

  /** One process's worth; the periodic sweep is an hour off, so that tests decide when to sweep. */
  const start = async (channels: readonly Channel[] = [], sweepEveryMs = HOUR * 60_000): Promise<Nudges> => {
    const nudges = await startNudges({
      store,
      ...home.target,
      clock,
      log,
      channels,
      concurrency: 4,
      sweepEveryMs,
      lockMs: 2_000,
    });
    started.push(nudges);
    return nudges;
  };

  beforeEach(async () => {
    await home.wipe();
    store = new MemoryStore();
    clock = new HandClock('2026-11-27T18:00:00Z');
    log = new QuietLog();
    started = [];
  });
  afterEach(async () => {
    await Promise.all(started.map((nudges) => nudges.stop()));
  });

  it('delivers once, with two workers and every alarm set twice', async () => {
    const sent: string[] = [];
    const channel = channelOf('bell', async ({ id }) => void sent.push(id));
    const [one, two] = [await start([channel]), await start([channel])];
    const waiting = Array.from({ length: 40 }, (_, i) => store.add(clock.in(i % 2)));
    await Promise.all([one.queue.enqueue(waiting), two.queue.enqueue(waiting)]);
    clock.advance(1);
    await Promise.all([one.sweep(), two.sweep()]);
    await one.idle();
    const ids = waiting.map(({ id }) => id).sort();
    expect(store.delivered.map(({ id }) => id).sort()).toEqual(ids);
    expect(sent.sort()).toEqual(ids);
  });

  it('rings a moved nudge only at its new time', async () => {
    const nudges = await start();
    const first = store.add(clock.in(10));
    await nudges.queue.enqueue([first]);
    const moved = store.move(first, clock.in(30));
    await nudges.queue.enqueue([moved]);

    clock.advance(10);
    await nudges.sweep();
    await nudges.idle();
    expect(store.delivered).toEqual([]);

    clock.advance(20);
    await nudges.sweep();
    await nudges.idle();
    expect(store.delivered.map(({ deliveredAt }) => deliveredAt)).toEqual([moved.dueAt]);
  });

  it('lets an alarm that outlived its nudge’s move ring without effect', async () => {
    const nudges = await start();
    const first = store.add(clock.now());
    store.move(first, clock.in(30));
    await nudges.queue.enqueue([first]);
    await nudges.idle();
    expect(store.claims).toEqual([{ id: first.id, version: 1 }]);
    expect(store.delivered).toEqual([]);
  });

  it.each(['with its alarm taken away', 'with its alarm left in the queue'])(
    'never delivers a cancelled nudge, %s',
    async (how) => {
      const nudges = await start();
      const nudge = store.add(clock.in(5));
      await nudges.queue.enqueue([nudge]);
      store.cancel(nudge);
      if (how.includes('away')) await nudges.queue.cancel([nudge]);
      clock.advance(5);
      await nudges.sweep();
      await nudges.idle();
      expect(store.delivered).toEqual([]);
    },
  );

  it('delivers everything after the queue was lost', async () => {
    const nudges = await start();
    const waiting = [store.add(clock.in(1)), store.add(clock.in(20))];
    await nudges.queue.enqueue(waiting);
    await home.wipe();
    clock.advance(1);
    await nudges.idle();
    expect(store.delivered).toHaveLength(0);

    await nudges.sweep();
    await nudges.idle();
    expect(store.delivered).toHaveLength(1);
    clock.advance(19);
    await nudges.sweep();
    await nudges.idle();
    expect(store.delivered.map(({ id }) => id)).toEqual(waiting.map(({ id }) => id));
  });

  it('sweeps at the start: what fell due while nothing ran is delivered', async () => {
    const nudge = store.add(clock.in(-90));
    await start();
    await expect.poll(() => store.delivered.map(({ id }) => id), { timeout: 10_000 }).toEqual([nudge.id]);
  });

  it('leaves a nudge beyond ten sweeps in the store until it comes near', async () => {
    const nudges = await start([], 60_000);
    const nudge = store.add(clock.in(11));
    await nudges.queue.enqueue([nudge]);
    expect(await nudges.sweep()).toEqual({ waiting: 0, overdue: 0 });
    clock.advance(2);
    expect(await nudges.sweep()).toEqual({ waiting: 1, overdue: 0 });
  });

  it('waits for the injected clock when the machine’s is ahead', async () => {
    const nudges = await start();
    const nudge = store.add(clock.in(0.005));
    await nudges.queue.enqueue([nudge]);
    // 300 ms of the machine's clock go by here, an instant by the injected one.
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(store.claims).toEqual([]);
    clock.advance(0.005);
    await nudges.sweep();
    await nudges.idle();
    expect(store.delivered.map(({ deliveredAt }) => deliveredAt)).toEqual([nudge.dueAt]);
  });

  it('repeats a failing channel without claiming again', async () => {
    const tried: string[] = [];
    const stubborn = channelOf('stubborn', async ({ id }) => {
      tried.push(id);
      if (tried.length < 3) throw new Error('line busy');
    });
    const other: string[] = [];
    const nudges = await start([stubborn, channelOf('other', async ({ id }) => void other.push(id))]);
    const nudge = store.add(clock.now());
    await nudges.queue.enqueue([nudge]);
    await nudges.idle();
    expect(tried).toEqual([nudge.id, nudge.id, nudge.id]);
    expect(other).toEqual([nudge.id]);
    expect(store.claims).toHaveLength(1);
    expect(
      log.lines.filter(({ level }) => level === 'error').map(({ details }) => details['reason']),
    ).toEqual(['line busy', 'line busy']);
  });

  it('tries again when the store does not answer', async () => {
    const nudges = await start();
    const claim = store.claim.bind(store);
    let failures = 1;
    store.claim = async (...args) => {
      if (failures-- > 0) throw new Error('store away');
      return claim(...args);
    };
    await nudges.queue.enqueue([store.add(clock.now())]);
    await nudges.idle();
    expect(store.delivered).toHaveLength(1);
  });

  it('takes nudges while the queue’s store is away, and delivers them when it is back', async () => {
    const nudges = await start();
    const early = store.add(clock.now());
    await nudges.queue.enqueue([early]);
    await nudges.idle();
    expect(await nudges.health()).toEqual({ queue: 'up', backend: home.name });

    await home.gate.close();
    try {
      expect(await nudges.health()).toEqual({ queue: 'down', backend: home.name });
      await expect(nudges.queue.enqueue([store.add(clock.now())])).resolves.toBeUndefined();
      await expect(nudges.queue.cancel([early])).resolves.toBeUndefined();
      expect(log.lines.map(({ message }) => message)).toContain(
        'Nudges could not be queued; the sweep will do it',
      );
      await expect(nudges.sweep()).rejects.toThrow();
      expect(store.delivered).toHaveLength(1);
    } finally {
      await home.gate.open();
    }
    await expect.poll(async () => (await nudges.health()).queue, { timeout: 10_000 }).toBe('up');
    await nudges.sweep();
    await expect.poll(() => store.delivered.length, { timeout: 25_000 }).toBe(2);
  });

  /** What the work comes to, with the store back in reach whatever that is. */
  async function thenOpen<T>(work: Promise<T>): Promise<T> {
    try {
      return await work;
    } finally {
      await home.gate.open();
    }
  }

  it.runIf(home.name === 'redis')('starts while Redis is away, and delivers when it comes', async () => {
    await home.gate.close();
    const nudge = store.add(clock.now());
    const nudges = await thenOpen(start([], 500));
    await expect.poll(() => store.delivered.map(({ id }) => id), { timeout: 20_000 }).toEqual([nudge.id]);
    expect(await nudges.health()).toEqual({ queue: 'up', backend: 'redis' });
  });

  it.runIf(home.name === 'postgres')('does not start without PostgreSQL', async () => {
    await home.gate.close();
    await expect(thenOpen(start())).rejects.toThrow(/ECONNREFUSED/);
  });

  it('stops while the queue’s store is away', async () => {
    const nudges = await start();
    await home.gate.close();
    try {
      await expect.poll(async () => (await nudges.health()).queue).toBe('down');
      await expect(nudges.stop()).resolves.toBeUndefined();
    } finally {
      await home.gate.open();
    }
  });

  it('walks through three days, across the end of summer time in Ireland', async () => {
    // Clocks there go back from 02:00 to 01:00 on 25 October 2026, at 01:00 UTC (Directive 2000/84/EC, art. 3).
    const local: readonly (readonly [string, string])[] = [
      ['2026-10-23T18:30', '2026-10-23T17:30:00.000Z'],
      ['2026-10-24T09:00', '2026-10-24T08:00:00.000Z'],
      ['2026-10-25T00:30', '2026-10-24T23:30:00.000Z'],
      // This time comes twice; the first is meant, an hour before the second.
      ['2026-10-25T01:30', '2026-10-25T00:30:00.000Z'],
      ['2026-10-25T02:30', '2026-10-25T02:30:00.000Z'],
      ['2026-10-25T18:00', '2026-10-25T18:00:00.000Z'],
      ['2026-10-26T20:00', '2026-10-26T20:00:00.000Z'],
    ];
    clock = new HandClock('2026-10-23T17:00:00Z');
    const nudges = await start();
    const waiting = local.map(([text]) => store.add(dublin(text)));
    await nudges.queue.enqueue(waiting);
    for (let halfHours = 0; halfHours < 3 * 48 + 8; halfHours += 1) {
      await nudges.sweep();
      await nudges.idle();
      clock.advance(30);
    }
    expect(store.delivered.map(({ deliveredAt }) => deliveredAt.toISOString())).toEqual(
      local.map(([, utc]) => utc),
    );
  }, 120_000);
});

function channelOf(name: string, send: (nudge: DeliveredNudge) => Promise<void>): Channel {
  return { name, send };
}

function dublin(local: string): Date {
  const at = instantOf(local, 'Europe/Dublin');
  if (at === undefined) throw new Error(`${local} is no local time.`);
  return new Date(epochMs(at));
}
