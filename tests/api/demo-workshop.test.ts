import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nothingLearned, workshopLessons, writeBatchSheet } from '#runs';
import type { Storage } from '#storage';
import { loadDemoWorkshop } from '../../apps/api/demo/load-demo.js';
import { sheetInput } from '../../apps/api/use-cases/run-input.js';
import { testDatabase, type TestDatabase } from '../support/database.js';

const now = new Date('2026-11-25T09:00:00Z');
let database: TestDatabase;
let storage: Storage;
let workshopId: string;

beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ now: () => now });
  workshopId = (await loadDemoWorkshop(storage, now)).id;
});
afterAll(() => database.drop());

describe('the demo workshop', () => {
  it('has runs to come, planned, and runs that are over and have taught', async () => {
    const runs = await storage.runs.list(workshopId);
    expect(runs.filter(({ state }) => state === 'planned').map(({ key }) => key)).toEqual([
      'harbour-market',
      'orchard',
    ]);
    expect(runs.filter(({ state }) => state === 'curing')).toHaveLength(3);
    const { lessons } = workshopLessons(await storage.teachings.list(workshopId, { butRun: null }));
    expect(new Set(lessons.map(({ pace }) => pace))).toEqual(new Set(['batter', 'early', 'set', 'cure']));
  });

  it('plans with what was learned, and offers its small moulds for what is left over', async () => {
    const run = (await storage.runs.list(workshopId)).find(({ key }) => key === 'harbour-market');
    if (run === undefined) throw new Error('no run');
    const plan = await storage.plans.latest(workshopId, run.id);
    const firm = plan?.document.runs[0]?.clocks.find(
      ({ part, state }) => part === 'sand' && state === 'firm',
    );
    expect(firm?.reasons.at(-1)?.rule).toBe('lesson');
    const sheet = writeBatchSheet(await sheetInput(storage, async () => nothingLearned, run));
    const deep = sheet.ok ? sheet.value.runs[0]?.amounts.find(({ part }) => part === 'deep') : undefined;
    expect(deep?.cover.leftoverUses.map(({ code }) => code)).toContain('leftover.fill');
  });
});
