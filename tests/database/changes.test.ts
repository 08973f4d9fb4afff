import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recipe } from '#contract';
import type { Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { facts, mould, order, seedRun, snapshot } from '../support/database-samples.js';

let database: TestDatabase;
let storage: Storage;
let workshopId: string;
let runId: string;
let now = new Date('2026-11-27T12:00:00.123Z');
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ now: () => now });
  ({ workshopId, runId } = await seedRun(storage));
});
afterAll(() => database.drop());

describe('a change that names its version', () => {
  it('goes through once; the second from the same version gets what is stored now', async () => {
    const first = await storage.workshops.update(workshopId, 1, { ...facts, hands: 2 });
    expect(first).toMatchObject({ ok: true, value: { version: 2, facts: { hands: 2 } } });
    const second = await storage.workshops.update(workshopId, 1, { ...facts, hands: 3 });
    expect(second).toMatchObject({
      ok: false,
      reason: 'stale',
      current: { version: 2, facts: { hands: 2 } },
    });
    expect(await storage.workshops.update(runId, 1, facts)).toBeNull();
  });

  it('goes through for one of twenty at once', async () => {
    const { version } = (await storage.workshops.get(workshopId)) ?? { version: 0 };
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => storage.workshops.update(workshopId, version, facts)),
    );
    expect(answers.filter((answer) => answer?.ok)).toHaveLength(1);
    expect(answers.filter((answer) => answer?.ok === false)).toHaveLength(19);
  });

  it('keeps the time of making and moves the time of change', async () => {
    const before = now;
    now = new Date('2026-11-28T12:00:00.456Z');
    const changed = await storage.runs.update(workshopId, runId, 1, { state: 'making' });
    expect(changed).toMatchObject({
      ok: true,
      value: { state: 'making', version: 2, createdAt: before, updatedAt: now, order, snapshot },
    });
    const stale = await storage.runs.update(workshopId, runId, 1, { state: 'abandoned' });
    expect(stale).toMatchObject({ ok: false, current: { state: 'making', version: 2 } });
  });

  it('holds for lots too', async () => {
    const day = new Date('2027-01-15T00:00:00.000Z');
    const lotFacts = {
      title: 'Tiles',
      count: 24,
      madeAt: day,
      readyLow: day,
      readyLikely: day,
      readyHigh: day,
    };
    const lot = await storage.lots.put(workshopId, runId, lotFacts);
    const same = await storage.lots.put(workshopId, runId, { ...lotFacts, count: 23 });
    expect(same).toMatchObject({ id: lot.id, version: 2, count: 23 });
    expect(await storage.lots.update(workshopId, lot.id, 1, { count: 9 })).toMatchObject({ ok: false });
    expect(await storage.lots.update(workshopId, lot.id, 2, { count: 22 })).toMatchObject({ ok: true });
    expect((await storage.lots.list(workshopId)).map(({ count }) => count)).toEqual([22]);
  });
});

describe('the library', () => {
  it('keeps content as it is, leaving out what is undefined', async () => {
    const content = recipe.parse({
      key: 'olive',
      title: 'Olive',
      fats: [{ fat: 'olive-oil', percent: 100 }],
    });
    const made = await storage.library.recipes.create(workshopId, { ...content, waterPerLye: undefined });
    expect(made).toMatchObject({ ok: true, value: { key: 'olive', version: 1, archivedAt: null } });
    expect((await storage.library.recipes.byKey(workshopId, 'olive'))?.content).toEqual(content);
    expect(await storage.library.fats.byKey(workshopId, 'olive')).toBeNull();
  });

  it('has one of each key in use, and frees the key when that one is archived', async () => {
    const { moulds } = storage.library;
    const first = await moulds.create(workshopId, mould);
    expect(await moulds.create(workshopId, mould)).toEqual({ ok: false, reason: 'key-taken' });
    if (!first.ok) throw new Error(first.reason);
    expect(await moulds.archive(workshopId, first.value.id, 7)).toMatchObject({ ok: false, reason: 'stale' });
    expect(await moulds.archive(workshopId, first.value.id, 1)).toMatchObject({
      ok: true,
      value: { version: 2 },
    });
    expect(await moulds.create(workshopId, mould)).toMatchObject({ ok: true });
    expect(await moulds.list(workshopId)).toHaveLength(1);
  });

  it('leaves the transaction usable when a key is taken', async () => {
    await storage.transaction(async (tx) => {
      await tx.library.moulds.create(workshopId, mould);
      expect(await tx.library.moulds.create(workshopId, mould)).toMatchObject({ ok: false });
      expect(await tx.library.moulds.list(workshopId)).toHaveLength(1);
    });
  });

  it('does not let a key change', async () => {
    const stored = await storage.library.moulds.byKey(workshopId, mould.key);
    const renamed = { ...mould, key: 'seven-sided' };
    await expect(storage.library.moulds.update(workshopId, stored?.id ?? '', 1, renamed)).rejects.toThrow(
      '"six-sided" cannot become "seven-sided"',
    );
  });

  it('refuses a second run with the same key', async () => {
    expect(await storage.runs.create(workshopId, { order, snapshot })).toEqual({
      ok: false,
      reason: 'key-taken',
    });
  });
});

describe('access keys', () => {
  it('let in who has the key, until it is revoked', async () => {
    const { raw, id } = await storage.keys.create(workshopId, 'phone');
    expect(Buffer.from(raw, 'base64url')).toHaveLength(32);
    expect(await storage.keys.verify(raw)).toEqual({ workshopId, keyId: id, lastSeenAt: null });
    expect(await storage.keys.verify(raw.slice(0, -1))).toBeNull();
    expect(await storage.keys.verify('')).toBeNull();
    expect((await storage.keys.revoke(workshopId, id))?.revokedAt).toEqual(now);
    expect(await storage.keys.verify(raw)).toBeNull();
  });

  it('are stored as their SHA-256 only (checked with PostgreSQL’s own)', async () => {
    const { raw, id } = await storage.keys.create(workshopId, 'tablet');
    const [row] = await database.sql<{ same: boolean; text: string }>(
      'SELECT hash = sha256(convert_to($1, $2)) AS same, k::text AS text FROM access_key k WHERE id = $3',
      [raw, 'UTF8', id],
    );
    expect(row?.same).toBe(true);
    expect(row?.text).not.toContain(raw);
    expect(JSON.stringify(await storage.keys.list(workshopId))).not.toContain(raw);
  });
});

describe('instants', () => {
  it('mean the same to the database whatever time zone it is set to', async () => {
    const name = new URL(database.url).pathname.slice(1);
    await database.sql(`ALTER DATABASE ${name} SET timezone = 'Pacific/Auckland'`);
    const elsewhere = await database.open({ now: () => now });
    const made = await elsewhere.workshops.create(facts);
    expect(made.createdAt).toEqual(now);
    const [row] = await database.sql<{ ms: string }>(
      'SELECT extract(epoch FROM created_at) * 1000 AS ms FROM workshop WHERE id = $1',
      [made.id],
    );
    expect(Number(row?.ms)).toBe(now.getTime());
  });
});
