import { randomUUID } from 'node:crypto';
import { afterAll, beforeEach, beforeAll, describe, expect, it } from 'vitest';
import { clearAll, type Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { nudge, planToSave, seedRun } from '../support/database-samples.js';

const DAY_MS = 24 * 60 * 60_000;
const NOW = Date.parse('2027-02-01T12:00:00Z');
const daysAgo = (days: number): Date => new Date(NOW - days * DAY_MS);

let database: TestDatabase;
let storage: Storage;
let now: Date;
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ now: () => now });
});
afterAll(() => database.drop());

let workshopId: string;
let runId: string;
beforeEach(async () => {
  now = daysAgo(40);
  ({ workshopId, runId } = await seedRun(storage));
});

const clear = () => clearAll({ storage, now: () => new Date(NOW) });
const ask = (key: string) =>
  storage.idempotency.once(workshopId, key, 'hash', async () => ({ status: 201, response: { made: now } }));
/** A plan made `now` that wants these nudges. @returns its number */
const plan = async (...nudges: ReturnType<typeof nudge>[]): Promise<number> => {
  const saved = await storage.plans.save(workshopId, { ...planToSave(runId, nudges), madeAt: now });
  return saved?.revision.number ?? 0;
};
const numbers = async () => (await storage.plans.list(workshopId, runId)).map(({ number }) => number);

describe('clearing', () => {
  it('gives a request that is repeated within 30 days its first answer, and lets older ones go', async () => {
    await ask('old');
    now = daysAgo(29.9);
    const first = await ask('young');
    now = new Date(NOW);
    expect(await clear()).toMatchObject({ idempotencyKeys: 1 });
    expect(await ask('young')).toMatchObject({
      ...first,
      replayed: true,
      response: { made: daysAgo(29.9).toISOString() },
    });
    expect(await ask('old')).toMatchObject({ replayed: false });
  });

  it('keeps the latest plan of a run however old, and those that a nudge refers to', async () => {
    await plan();
    await plan(nudge({ dueAt: daysAgo(-5) }));
    await plan(nudge({ dueAt: daysAgo(-5) }));
    await storage.nudges.cancelForRun(workshopId, runId);
    await plan();
    await plan();
    // The third has a nudge that was cancelled but is not due for days; the fifth is the latest.
    expect(await clear()).toMatchObject({ planRevisions: 3, nudges: 0 });
    expect(await numbers()).toEqual([5, 3]);
    expect(await clear()).toEqual({
      idempotencyKeys: 0,
      nudges: 0,
      planRevisions: 0,
      signInCodes: 0,
      photos: 0,
    });
  });

  it('keeps a plan while an answer shows it, and lets both go together', async () => {
    await plan();
    const shown = await storage.plans.latest(workshopId, runId);
    await plan();
    now = daysAgo(29.9);
    const answer = { key: 'shown', requestHash: 'hash', status: 201, response: null };
    await storage.idempotency.keep(workshopId, { ...answer, revisionId: shown?.id ?? null });
    expect(await clear()).toMatchObject({ planRevisions: 0, idempotencyKeys: 0 });
    await database.sql("UPDATE idempotency_key SET created_at = $1 WHERE key = 'shown'", [daysAgo(31)]);
    expect(await clear()).toMatchObject({ planRevisions: 1, idempotencyKeys: 1 });
    expect(await numbers()).toEqual([2]);
  });

  it('keeps plans of the last 30 days, to which an entry that is taken back returns', async () => {
    await plan();
    now = daysAgo(29.9);
    await plan();
    await plan();
    expect(await clear()).toMatchObject({ planRevisions: 1 });
    expect(await numbers()).toEqual([3, 2]);
  });

  it('lets nudges go that were delivered or cancelled long ago, and none that waits', async () => {
    const stages = ['a', 'b', 'c', 'd'];
    await plan(...stages.map((stage) => nudge({ stage, dueAt: daysAgo(stage === 'd' ? 20 : 39) })));
    const waiting = await storage.nudges.list(workshopId, { status: 'waiting' });
    const id = (stage: string) => waiting.find((each) => each.stage === stage)?.id ?? '';
    await storage.nudges.claim(id('a'), 1, daysAgo(39));
    await storage.nudges.claim(id('b'), 1, daysAgo(20));
    await storage.nudges.claim(id('d'), 1, daysAgo(20));
    expect(await clear()).toMatchObject({ nudges: 1 });
    const left = await storage.nudges.list(workshopId);
    expect(left.map(({ stage, status }) => `${stage} ${status}`)).toEqual([
      'b delivered',
      'c waiting',
      'd delivered',
    ]);
  });

  it('touches nothing else, and keeps a code that is still good', async () => {
    await storage.log.append(workshopId, runId, {
      kind: 'not-yet',
      stage: 'pour-base',
      at: now.toISOString(),
    });
    const { raw } = await storage.keys.create(workshopId, 'phone');
    await storage.signInCodes.create(workshopId);
    expect(await clear()).toMatchObject({ signInCodes: 1 });
    now = new Date(NOW);
    const { code } = await storage.signInCodes.create(workshopId);
    await clear();
    expect(await storage.signInCodes.redeem(code)).toEqual({ workshopId });
    expect(await storage.keys.verify(raw)).not.toBeNull();
    expect(await storage.log.list(workshopId)).toHaveLength(1);
    expect(await storage.runs.list(workshopId)).toHaveLength(1);
  });

  it('goes in steps, by several at once, each row once', async () => {
    await database.sql(
      `INSERT INTO idempotency_key (workshop_id, key, request_hash, status, response, created_at)
       SELECT $1, 'k' || n, 'hash', 201, '{}', $2 FROM generate_series(1, 1200) AS n`,
      [workshopId, daysAgo(31)],
    );
    const before = daysAgo(30);
    expect((await storage.clearing.clear(workshopId, before, 50)).idempotencyKeys).toBe(50);
    const three = await Promise.all([clear(), clear(), clear()]);
    expect(three.reduce((sum, each) => sum + each.idempotencyKeys, 0)).toBe(1150);
  });

  it('is the only way to remove a plan, and the latest goes in no way', async () => {
    await plan();
    await plan();
    const remove = (number: number) =>
      database.sql('DELETE FROM plan_revision WHERE run_id = $1 AND number = $2', [runId, number]);
    await expect(remove(1)).rejects.toThrow('DELETE refused');
    await database.sql("SELECT set_config('benchtide.clearing', 'on', false)");
    try {
      await expect(remove(2)).rejects.toThrow('the latest plan of a run stays');
      await remove(1);
    } finally {
      await database.sql("SELECT set_config('benchtide.clearing', 'off', false)");
    }
    expect(await numbers()).toEqual([2]);
  });

  it('lets photos go that no note shows, or only notes that were taken back or corrected', async () => {
    const keep = async (shown: 'never' | 'shown' | 'taken-back' | 'corrected'): Promise<string> => {
      const id = randomUUID();
      const photo = { id, width: 1, height: 1, bytes: Buffer.from([1]) };
      const room = { runBytes: 1e6, workshopBytes: 1e6, leastCounted: 1 };
      await storage.transaction((tx) => tx.photos.keep(workshopId, runId, photo, room));
      if (shown === 'never') return id;
      const at = now.toISOString();
      const note = await storage.log.append(workshopId, runId, { kind: 'note', photos: [{ photo: id }], at });
      if (shown === 'taken-back')
        await storage.log.append(workshopId, runId, { kind: 'take-back', entry: note.id, at });
      if (shown === 'corrected')
        await storage.log.append(workshopId, runId, { kind: 'note', note: 'x', corrects: note.id, at });
      return id;
    };
    const kept = [await keep('shown')];
    for (const gone of ['never', 'taken-back', 'corrected'] as const) await keep(gone);
    now = daysAgo(29.9);
    kept.push(await keep('never'));
    expect(await clear()).toMatchObject({ photos: 3 });
    expect((await storage.photos.list(workshopId, runId)).map(({ id }) => id)).toEqual(kept);
  });
});
