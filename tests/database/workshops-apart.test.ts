import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { mould, nudge, planToSave, seedRun } from '../support/database-samples.js';

let database: TestDatabase;
let storage: Storage;
let mine: { workshopId: string; runId: string };
let hers: { workshopId: string; runId: string };
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open();
  mine = await seedRun(storage);
  hers = await seedRun(storage);
  await storage.plans.save(hers.workshopId, planToSave(hers.runId, [nudge()]));
  await storage.plans.save(mine.workshopId, planToSave(mine.runId, [nudge()]));
  await storage.lots.put(hers.workshopId, hers.runId, lot);
});
afterAll(() => database.drop());

const day = new Date('2027-01-15T00:00:00.000Z');
const lot = { title: 'Tiles', count: 24, madeAt: day, readyLow: day, readyLikely: day, readyHigh: day };

describe('the database', () => {
  it('has no table but the workshop’s own without the workshop in every key and reference', async () => {
    const keys = await database.sql<{ name: string; definition: string }>(`
      SELECT conname AS name, pg_get_constraintdef(oid) AS definition FROM pg_constraint
      WHERE connamespace = 'public'::regnamespace AND contype IN ('p', 'f')
        AND conrelid NOT IN ('workshop'::regclass, '_prisma_migrations'::regclass)`);
    expect(keys.length).toBeGreaterThan(19);
    const without = keys.filter(
      ({ definition }) => !/^(PRIMARY|FOREIGN) KEY \(workshop_id\b/.test(definition),
    );
    expect(without).toEqual([]);
  });

  it.each(['nudge', 'lot'])('refuses a row of %s that points into another workshop', async (table) => {
    const point = `UPDATE ${table} SET run_id = $1 WHERE workshop_id = $2`;
    await expect(database.sql(point, [mine.runId, hers.workshopId])).rejects.toThrow('violates foreign key');
    await expect(database.sql(point, [hers.runId, hers.workshopId])).resolves.toEqual([]);
  });

  it('refuses a plan of mine for her run', async () => {
    const insert = `INSERT INTO plan_revision (id, workshop_id, run_id, number, made_at, cause, status, document, changes)
      VALUES (gen_random_uuid(), $1, $2, 99, now(), '{}', 'planned', '{}', '[]')`;
    await expect(database.sql(insert, [mine.workshopId, hers.runId])).rejects.toThrow('violates foreign key');
    await expect(database.sql(insert, [mine.workshopId, mine.runId])).resolves.toEqual([]);
  });

  it('refuses a log entry of mine for her run', async () => {
    const entry = { kind: 'not-yet', stage: 'pour-base', at: '2026-11-27T17:00:00Z' } as const;
    await expect(storage.log.append(mine.workshopId, hers.runId, entry)).rejects.toThrow(/[Ff]oreign key/);
  });
});

describe('the repositories', () => {
  it('find nothing of hers under my workshop', async () => {
    const { workshopId } = mine;
    const created = await storage.library.moulds.create(hers.workshopId, mould);
    if (!created.ok) throw new Error(created.reason);
    const her = created.value;
    const [herNudge] = await storage.nudges.list(hers.workshopId);
    const [herLot] = await storage.lots.list(hers.workshopId);
    const herKey = await storage.keys.create(hers.workshopId, 'phone');
    expect(await storage.library.moulds.get(workshopId, her.id)).toBeNull();
    expect(await storage.library.moulds.update(workshopId, her.id, 1, mould)).toBeNull();
    expect(await storage.library.moulds.archive(workshopId, her.id, 1)).toBeNull();
    expect(await storage.runs.get(workshopId, hers.runId)).toBeNull();
    expect(await storage.runs.update(workshopId, hers.runId, 1, { state: 'abandoned' })).toBeNull();
    expect(await storage.plans.latest(workshopId, hers.runId)).toBeNull();
    expect(await storage.plans.save(workshopId, planToSave(hers.runId, []))).toBeNull();
    expect(await storage.nudges.get(workshopId, herNudge?.id ?? '')).toBeNull();
    expect(await storage.nudges.cancelForRun(workshopId, hers.runId)).toEqual([]);
    expect(await storage.lots.update(workshopId, herLot?.id ?? '', 1, { count: 0 })).toBeNull();
    expect(await storage.keys.revoke(workshopId, herKey.id)).toBeNull();
    expect(await storage.keys.rename(workshopId, herKey.id, 'mine')).toBeNull();
    await storage.keys.noteSeen(workshopId, herKey.id, null);
    const verified = { workshopId: hers.workshopId, keyId: herKey.id, lastSeenAt: null };
    expect(await storage.keys.verify(herKey.raw)).toEqual(verified);
    expect((await storage.keys.get(hers.workshopId, herKey.id))?.label).toBe('phone');
  });
});
