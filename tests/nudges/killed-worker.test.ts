import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { startNudges } from '#nudges';
import { testDatabase } from '../support/database.js';
import { HandClock } from './support/hand-clock.js';
import { MemoryStore } from './support/memory-store.js';
import { openQueueHomes } from './support/queue-homes.js';
import { QuietLog } from './support/quiet-log.js';
import { startRemoteWorker } from './support/remote-worker.js';

const database = await testDatabase();
const homes = await openQueueHomes(database, 3);
afterAll(async () => {
  await Promise.all(homes.map((home) => home.stop()));
  await database.drop();
});

const NOW = '2026-11-27T18:00:00Z';
const lockMs = 2_000;

describe.each(homes)('a worker killed in the middle of a delivery, over $name', (home) => {
  beforeEach(() => home.wipe());

  it.each([
    ['just before the store hears of its claim', false],
    ['just after the store has taken its claim', true],
  ])(
    'leaves the nudge delivered once, killed %s',
    async (_, claimed) => {
      const store = new MemoryStore();
      const clock = new HandClock(NOW);
      const nudge = store.add(clock.now());
      const doomed = startRemoteWorker({ now: NOW, nudge, target: home.target, lockMs });
      try {
        expect(await doomed.claim).toEqual({ id: nudge.id, version: 1 });
        if (claimed) await store.claim(nudge.id, 1, clock.now());
      } finally {
        await doomed.kill();
      }
      const heir = await startNudges({
        store,
        ...home.target,
        clock,
        log: new QuietLog(),
        channels: [],
        concurrency: 1,
        sweepEveryMs: 60 * 60_000,
        lockMs,
      });
      try {
        await expect.poll(() => store.claims.length, { timeout: 20_000 }).toBe(claimed ? 2 : 1);
        await heir.idle();
        expect(store.delivered.map(({ id }) => id)).toEqual([nudge.id]);
      } finally {
        await heir.stop();
      }
    },
    60_000,
  );
});
