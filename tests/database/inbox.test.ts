import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { listenInbox, type InboxNotice, type Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { nudge, planToSave, seedRun } from '../support/database-samples.js';

let database: TestDatabase;
let storage: Storage;
let workshopId: string;
let runId: string;
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ poolSize: 10 });
});
beforeEach(async () => {
  ({ workshopId, runId } = await seedRun(storage));
});
afterAll(() => database.drop());

const due = nudge().dueAt;
const after = new Date(due.getTime() + 1000);
const before = new Date(due.getTime() - 1);

async function waiting(count = 1): Promise<string[]> {
  const wanted = Array.from({ length: count }, (_, i) => nudge({ stage: `stage-${i}` }));
  const saved = await storage.plans.save(workshopId, planToSave(runId, wanted));
  return saved?.moved.map(({ id }) => id) ?? [];
}

describe('nudges.claim', () => {
  it('gives a nudge to exactly one of twenty that ask at once', async () => {
    const [id = ''] = await waiting();
    const answers = await Promise.all(Array.from({ length: 20 }, () => storage.nudges.claim(id, 1, after)));
    expect(answers.filter((answer) => answer !== null)).toMatchObject([
      { id, workshopId, status: 'delivered', deliveredAt: after, stage: 'stage-0', run: 'first-tide' },
    ]);
    expect(await storage.nudges.inboxSince(workshopId, 0)).toHaveLength(1);
  });

  it('gives it to one of twenty in different processes’ pools too', async () => {
    const [id = ''] = await waiting();
    const others = await Promise.all([1, 2, 3, 4].map(() => database.open({ poolSize: 5 })));
    const asking = others.flatMap((other) =>
      Array.from({ length: 5 }, () => other.nudges.claim(id, 1, after)),
    );
    expect((await Promise.all(asking)).filter((answer) => answer !== null)).toHaveLength(1);
  });

  it('refuses one that is not due, has moved, was cancelled or never was', async () => {
    const [id = ''] = await waiting();
    expect(await storage.nudges.claim(id, 1, before)).toBeNull();
    expect(await storage.nudges.claim(id, 2, after)).toBeNull();
    expect(await storage.nudges.claim(runId, 1, after)).toBeNull();
    expect(await storage.nudges.cancelForRun(workshopId, runId)).toEqual([{ id, version: 1 }]);
    expect(await storage.nudges.claim(id, 1, after)).toBeNull();
    expect(await storage.nudges.inboxSince(workshopId, 0)).toEqual([]);
  });

  it('delivers at the very instant it is due', async () => {
    const [id = ''] = await waiting();
    expect(await storage.nudges.claim(id, 1, due)).not.toBeNull();
  });

  it('never both delivers a nudge and lets a new plan move it', async () => {
    for (let round = 0; round < 10; round += 1) {
      const stage = `round-${round}`;
      const first = await storage.plans.save(workshopId, planToSave(runId, [nudge({ stage })]));
      const { id = '' } = first?.moved[0] ?? {};
      const [claimed, replanned] = await Promise.all([
        storage.nudges.claim(id, 1, after),
        storage.plans.save(workshopId, planToSave(runId, [nudge({ stage, dueAt: after })])),
      ]);
      const movedSame = replanned?.moved.some((moved) => moved.id === id) ?? false;
      expect([claimed !== null, movedSame].filter(Boolean)).toHaveLength(1);
    }
  });
});

describe('nudges.due', () => {
  it('lists what waits and is due before an instant, over all workshops, the longest due first', async () => {
    await database.sql("UPDATE nudge SET status = 'cancelled' WHERE status = 'waiting'");
    const [mine] = await waiting();
    const other = await seedRun(storage);
    const early = nudge({ dueAt: before });
    const saved = await storage.plans.save(other.workshopId, planToSave(other.runId, [early]));
    const ids = async (limit: number, until: Date) =>
      (await storage.nudges.due(limit, until)).map(({ id }) => id);
    expect(await ids(10, after)).toEqual([saved?.moved[0]?.id, mine]);
    expect(await ids(10, due)).toEqual([saved?.moved[0]?.id]);
    expect(await ids(1, after)).toEqual([saved?.moved[0]?.id]);
  });

  it('lists what is due at one instant in a fixed order, so that a step of a sweep leaves none out', async () => {
    await database.sql("UPDATE nudge SET status = 'cancelled' WHERE status = 'waiting'");
    const all = await waiting(8);
    // Moved away and back, a row lies behind the others, in the index as well.
    for (const by of ['1 s', '-1 s'])
      await database.sql('UPDATE nudge SET due_at = due_at + $2::interval WHERE id = $1', [all[2], by]);
    const listed = (await storage.nudges.due(8, after)).map(({ id }) => id);
    expect(listed).toEqual([...all].sort());
  });
});

describe('nudges.list', () => {
  it('lists those of a run or in a state, by when they are due', async () => {
    const late = { ...nudge({ stage: 'late' }), dueAt: after };
    await storage.plans.save(workshopId, planToSave(runId, [late, nudge()]));
    const list = async (filter?: Parameters<Storage['nudges']['list']>[1]) =>
      (await storage.nudges.list(workshopId, filter)).map(({ stage }) => stage);
    expect(await list()).toEqual(['pour-base', 'late']);
    expect(await list({ runId })).toEqual(['pour-base', 'late']);
    expect(await list({ runId: workshopId })).toEqual([]);
    const [first] = await storage.nudges.list(workshopId);
    await storage.nudges.claim(first?.id ?? '', 1, due);
    expect(await list({ status: 'delivered', runId })).toEqual(['pour-base']);
    expect(await list({ status: 'waiting' })).toEqual(['late']);
  });
});

describe('nudges.get', () => {
  it('gives a nudge of the workshop as it is, before it is delivered and after', async () => {
    const [id = ''] = await waiting();
    const before = await storage.nudges.get(workshopId, id);
    expect(before).toEqual({
      ...nudge({ stage: 'stage-0' }),
      ...{ id, workshopId, runId, run: 'first-tide', runTitle: 'First tide' },
      ...{ revisionId: expect.any(String) as string, status: 'waiting', version: 1 },
      ...{ sequence: null, deliveredAt: null },
    });
    const delivered = await storage.nudges.claim(id, 1, after);
    expect(delivered?.sequence).toBeGreaterThan(0);
    expect(await storage.nudges.get(workshopId, id)).toEqual({
      ...before,
      ...{ status: 'delivered', deliveredAt: after, sequence: delivered?.sequence },
    });
  });

  it('gives none of another workshop', async () => {
    const [id = ''] = await waiting();
    const other = await seedRun(storage);
    expect(await storage.nudges.get(other.workshopId, id)).toBeNull();
  });
});

describe('nudges.readerOf', () => {
  it('tells in which language, units and zone a workshop reads, and nothing else', async () => {
    const { facts } = (await storage.workshops.get(workshopId)) ?? {};
    const { language, units, timeZone } = facts ?? {};
    expect(await storage.nudges.readerOf(workshopId)).toEqual({ language, units, timeZone });
    await expect(storage.nudges.readerOf(runId)).rejects.toThrow(`There is no workshop ${runId}.`);
  });
});

describe('the inbox', () => {
  it('is read on from a place', async () => {
    const ids = await waiting(3);
    for (const id of ids) await storage.nudges.claim(id, 1, after);
    const all = await storage.nudges.inboxSince(workshopId, 0);
    expect(all.map(({ id }) => id)).toEqual(ids);
    expect(await storage.nudges.inboxSince(workshopId, all[1]?.sequence ?? 0)).toEqual(all.slice(2));
  });

  // A claim stops between drawing its place and committing; a second one must not overtake it.
  it('never shows a later place before an earlier one', async () => {
    const [slow = '', fast = ''] = await waiting(2);
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => (release = resolve));
    let drawn = (): void => undefined;
    const hasDrawn = new Promise<void>((resolve) => (drawn = resolve));
    const first = storage.transaction(async (tx) => {
      const claimed = await tx.nudges.claim(slow, 1, after);
      drawn();
      await held;
      return claimed;
    });
    await hasDrawn;
    const second = storage.nudges.claim(fast, 1, after);
    const waits = `SELECT 1 FROM pg_locks WHERE locktype = 'advisory' AND NOT granted`;
    await vi.waitFor(async () => expect(await database.sql(waits)).toHaveLength(1), 5000);
    expect(await storage.nudges.inboxSince(workshopId, 0)).toEqual([]);
    release();
    expect((await first)?.sequence).toBeLessThan((await second)?.sequence ?? 0);
  });
});

describe('listenInbox', () => {
  it('hears of each delivery once, with its place', async () => {
    const notices: InboxNotice[] = [];
    const listener = await listenInbox(database.url, (notice) => notices.push(notice));
    const [id = ''] = await waiting();
    const claimed = await storage.nudges.claim(id, 1, after);
    await storage.nudges.claim(id, 1, after);
    await vi.waitFor(() =>
      expect(notices).toEqual([{ workshopId, nudgeId: id, sequence: claimed?.sequence }]),
    );
    await listener.close();
  });

  it('hears nothing of a delivery that was rolled back', async () => {
    const notices: InboxNotice[] = [];
    const listener = await listenInbox(database.url, (notice) => notices.push(notice));
    const [lost = '', kept = ''] = await waiting(2);
    const work = storage.transaction(async (tx) => {
      await tx.nudges.claim(lost, 1, after);
      throw new Error('power cut');
    });
    await expect(work).rejects.toThrow('power cut');
    await storage.nudges.claim(kept, 1, after);
    await vi.waitFor(() => expect(notices.map(({ nudgeId }) => nudgeId)).toEqual([kept]));
    await listener.close();
  });

  it('connects anew when its connection is cut, and says that it may have missed something', async () => {
    const notices: InboxNotice[] = [];
    const onGap = vi.fn();
    const listener = await listenInbox(database.url, (notice) => notices.push(notice), onGap);
    await database.sql(`SELECT pg_terminate_backend(pid) FROM pg_stat_activity
      WHERE query LIKE 'LISTEN%' AND datname = current_database()`);
    await vi.waitFor(() => expect(onGap).toHaveBeenCalledTimes(1), 10_000);
    const [id = ''] = await waiting();
    await storage.nudges.claim(id, 1, after);
    await vi.waitFor(() => expect(notices).toHaveLength(1));
    await listener.close();
  });
});
