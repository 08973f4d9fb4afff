import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import type { Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { facts } from '../support/database-samples.js';

const START = Date.parse('2026-11-27T18:00:00Z');
const MINUTE_MS = 60_000;
let database: TestDatabase;
let storage: Storage;
let elsewhere: Storage;
let workshopId: string;
let now: number;

beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ now: () => new Date(now) });
  // As a second process of the API would have it.
  elsewhere = await database.open({ now: () => new Date(now) });
});
beforeEach(async () => {
  now = START;
  workshopId = (await storage.workshops.create(facts)).id;
});
afterAll(() => database.drop());

it('lets in once, in whichever process, however it is typed', async () => {
  const { code } = await storage.signInCodes.create(workshopId);
  expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
  const typed = ` ${code.toLowerCase().replace('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')}`;
  expect(await elsewhere.signInCodes.redeem(typed)).toEqual({ workshopId });
  expect(await storage.signInCodes.redeem(code)).toBeNull();
});

it('lets in one of many that use it at once', async () => {
  const { code } = await storage.signInCodes.create(workshopId);
  const tries = Array.from({ length: 12 }, (_, i) => (i % 2 ? storage : elsewhere).signInCodes.redeem(code));
  const letIn = (await Promise.all(tries)).filter((owner) => owner !== null);
  expect(letIn).toEqual([{ workshopId }]);
});

it('is good for a quarter of an hour, to the moment', async () => {
  const { code, expiresAt } = await storage.signInCodes.create(workshopId);
  const other = await storage.signInCodes.create(workshopId);
  expect(expiresAt).toEqual(new Date(START + 15 * MINUTE_MS));
  now = START + 15 * MINUTE_MS - 1;
  expect(await storage.signInCodes.redeem(other.code)).toEqual({ workshopId });
  now = START + 15 * MINUTE_MS;
  expect(await storage.signInCodes.redeem(code)).toBeNull();
});

it('stays good when what it was used for did not come about', async () => {
  const { code } = await storage.signInCodes.create(workshopId);
  const failing = storage.transaction(async (tx) => {
    await tx.signInCodes.redeem(code);
    throw new Error('the key could not be made');
  });
  await expect(failing).rejects.toThrow('could not be made');
  expect(await storage.signInCodes.redeem(code)).toEqual({ workshopId });
});

it('belongs to one workshop, and making one clears away only what ran out there', async () => {
  const hers = await storage.workshops.create(facts);
  const old = await storage.signInCodes.create(hers.id);
  await storage.signInCodes.create(workshopId);
  now = START + 20 * MINUTE_MS;
  const fresh = await storage.signInCodes.create(workshopId);
  const rows = await database.sql<{ workshop_id: string }>(
    'SELECT workshop_id FROM sign_in_code WHERE workshop_id IN ($1, $2) ORDER BY created_at',
    [workshopId, hers.id],
  );
  expect(rows.map((row) => row.workshop_id)).toEqual([hers.id, workshopId]);
  expect(await storage.signInCodes.redeem(old.code)).toBeNull();
  expect(await storage.signInCodes.redeem(fresh.code)).toEqual({ workshopId });
});

it('is stored as its SHA-256 only (checked with PostgreSQL’s own)', async () => {
  const { code } = await storage.signInCodes.create(workshopId);
  const rows = await database.sql<{ same: boolean; text: string }>(
    `SELECT hash = sha256(convert_to($1, 'UTF8')) AS same, c::text AS text FROM sign_in_code c
     WHERE workshop_id = $2`,
    [code.replace('-', ''), workshopId],
  );
  expect(rows.map(({ same }) => same)).toEqual([true]);
  expect(rows[0]?.text).not.toContain(code.slice(0, 4));
});
