import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stockEntry } from '#contract';
import type { Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { planToSave, seedRun } from '../support/database-samples.js';

// The check is the database's own: the statements go past the repositories.
let database: TestDatabase;
let storage: Storage;
let at: { workshopId: string; runId: string };
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open();
  at = await seedRun(storage);
  await storage.log.append(at.workshopId, at.runId, {
    kind: 'done',
    stage: 'pour-base',
    at: '2026-11-27T20:00:00+01:00',
    note: 'a little thick',
  });
  await storage.plans.save(at.workshopId, planToSave(at.runId, []));
  const counted = { kind: 'count', material: 'olive', unit: 'g', amount: 700, at: '2026-11-27T20:00:00Z' };
  await storage.stock.append(at.workshopId, crypto.randomUUID(), stockEntry.parse(counted));
});
afterAll(() => database.drop());

describe.each(['bench_log', 'plan_revision'])('%s', (table) => {
  it.each([
    ['UPDATE', `UPDATE ${table} SET run_id = run_id`],
    ['DELETE', `DELETE FROM ${table}`],
    ['TRUNCATE', `TRUNCATE ${table} CASCADE`],
  ])('refuses %s and keeps its row', async (operation, statement) => {
    await expect(database.sql(statement)).rejects.toThrow(`${operation} refused`);
    expect(await database.sql(`SELECT 1 FROM ${table}`)).toHaveLength(1);
  });
});

it.each(['bench_log', 'plan_revision', 'stock_entry'])(
  'the clearing cannot remove from %s what is of no demo',
  async (table) => {
    await database.sql(`SELECT set_config('benchtide.clearing', 'on', false)`);
    await expect(database.sql(`DELETE FROM ${table}`)).rejects.toThrow(/stays.*: DELETE refused/);
    await database.sql(`SELECT set_config('benchtide.clearing', 'off', false)`);
  },
);

describe('log', () => {
  it('gives entries back as they were written, in the order of writing', async () => {
    const again = await storage.log.append(at.workshopId, at.runId, {
      kind: 'not-yet',
      stage: 'pour-base',
      at: '2026-11-27T17:00:00.000Z',
    });
    const entries = await storage.log.list(at.workshopId, { runId: at.runId });
    expect(entries.map(({ entry }) => entry.kind)).toEqual(['done', 'not-yet']);
    expect(entries[0]).toMatchObject({ at: new Date('2026-11-27T19:00:00.000Z') });
    expect(entries[0]?.entry.note).toBe('a little thick');
    expect(entries[1]).toEqual(again);
  });

  it('hands out an entry of the first run only to those who ask for that run or for all', async () => {
    expect(await storage.log.list(at.workshopId)).toHaveLength(2);
    expect(await storage.log.list(at.workshopId, { runId: at.workshopId })).toEqual([]);
  });
});
