import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import type { RunTeachings } from '#contract';
import type { Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { seedRun } from '../support/database-samples.js';

let database: TestDatabase;
let storage: Storage;
let workshopId: string;
let runId: string;
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open();
});
beforeEach(async () => {
  ({ workshopId, runId } = await seedRun(storage));
});
afterAll(() => database.drop());

function teachings(usedG: number): RunTeachings {
  const weighing = { design: 'tile', part: 'base', pieces: 12, expectedMl: 30, usedG, at: 29_000_000 };
  return { observations: [], earliest: [], weighings: [weighing] };
}
const keep = (usedG: number, through = 1) =>
  storage.teachings.put(workshopId, [{ runId, basis: 'b', through, teachings: teachings(usedG) }]);
const version = (butRun: string | null = null) => storage.teachings.version(workshopId, butRun);

it('gets a higher version when it teaches something else, and only then', async () => {
  expect(await version()).toBe(0);
  await keep(400);
  expect(await version()).toBe(1);
  await keep(400, 2);
  expect(await version()).toBe(1);
  await keep(410, 3);
  expect([await version(), await version(runId)]).toEqual([2, 0]);
  expect(await storage.teachings.list(workshopId, { butRun: null })).toEqual([teachings(410)]);
  expect(await storage.teachings.list(workshopId, { butRun: runId })).toEqual([]);
});

it('is kept for many runs at once, each with a version of its own', async () => {
  await keep(400);
  const created = await storage.runs.create(workshopId, {
    ...(await storage.runs.get(workshopId, runId))!,
    order: { ...(await storage.runs.get(workshopId, runId))!.order, key: 'another' },
  });
  if (!created.ok) throw new Error(created.reason);
  const both = [created.value.id, runId].map((id, i) => {
    return { runId: id, basis: 'b', through: 2, teachings: teachings(i === 0 ? 500 : 410) };
  });
  await storage.teachings.put(workshopId, both);
  await storage.teachings.put(workshopId, []);
  expect([await version(), await version(runId)]).toEqual([3, 2]);
  expect(await storage.teachings.list(workshopId, { butRun: runId })).toEqual([teachings(500)]);
});

it('counts with runs under way, and then with those that are over', async () => {
  await keep(400);
  const lists = async () => [
    (await storage.teachings.list(workshopId, { butRun: null, over: false })).length,
    (await storage.teachings.list(workshopId, { butRun: null, over: true })).length,
  ];
  const none = await storage.teachings.overMark(workshopId, null);
  expect(await lists()).toEqual([1, 0]);
  await storage.runs.update(workshopId, runId, 1, { state: 'curing' });
  expect(await lists()).toEqual([0, 1]);
  const mark = await storage.teachings.overMark(workshopId, null);
  expect(mark).not.toBe(none);
  expect(await storage.teachings.overMark(workshopId, runId)).toBe(none);
  await keep(410);
  expect(await storage.teachings.overMark(workshopId, null)).not.toBe(mark);
});

it('tells how far it goes and what it rests on', async () => {
  const look = { kind: 'not-yet', stage: 'pour-base', at: '2026-11-27T17:00:00Z' } as const;
  expect(await storage.teachings.standing(workshopId)).toEqual([]);
  const { sequence } = await storage.log.append(workshopId, runId, look);
  const [bare] = await storage.teachings.standing(workshopId);
  expect(bare).toMatchObject({ runId, sequence, basis: null, through: null });
  expect(await storage.teachings.knowsLatest(workshopId)).toBe(false);
  await keep(400, sequence);
  expect(await storage.teachings.standing(workshopId)).toMatchObject([{ basis: 'b', through: sequence }]);
  expect(await storage.teachings.knowsLatest(workshopId)).toBe(true);
  await storage.log.append(workshopId, runId, look);
  expect(await storage.teachings.knowsLatest(workshopId)).toBe(false);
});
