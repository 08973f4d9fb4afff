import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { nudge, plan, planToSave, seedRun, stage } from '../support/database-samples.js';

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
const START = new Date('2026-11-27T12:00:00Z');
const later = (ms: number): Date => new Date(START.getTime() + ms);
const AHEAD = later(20 * DAY_MS);
const due = later(3 * DAY_MS);

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
  now = START;
  // All workshops are looked at, so those of other tests must be over.
  await database.sql("UPDATE run SET state = 'abandoned'");
  ({ workshopId, runId } = await seedRun(storage));
});

/** Plans as of `now`. @returns the nudges that are new or moved */
const planned = async (nudges = [nudge({ dueAt: due })], document = plan()) => {
  const saved = await storage.plans.save(workshopId, {
    ...planToSave(runId, nudges, document),
    madeAt: now,
  });
  return saved?.moved ?? [];
};
/** Delivers all that is due by a clock. */
const deliver = async (at: Date): Promise<number> => {
  const waiting = await storage.nudges.due(100, new Date(at.getTime() + 1));
  const mine = waiting.filter((each) => each.workshopId === workshopId);
  const claimed = await Promise.all(mine.map(({ id, version }) => storage.nudges.claim(id, version, at)));
  return claimed.filter((each) => each !== null).length;
};
const states = async (): Promise<string[]> =>
  (await storage.nudges.list(workshopId)).map(({ status, version }) => `${status} ${String(version)}`);

describe('nudges that a clock which was ahead has delivered', () => {
  it('wait again once it is back, to be delivered when they are due', async () => {
    await planned();
    expect(await deliver(AHEAD)).toBe(1);
    expect(await storage.nudges.undoEarly(later(MINUTE_MS))).toBe(1);
    expect(await states()).toEqual(['waiting 2']);
    expect(await deliver(later(2 * DAY_MS))).toBe(0);
    expect(await deliver(due)).toBe(1);
    expect(await storage.nudges.undoEarly(due)).toBe(0);
    expect(await states()).toEqual(['delivered 2']);
  });

  it('come at once where they fell due before it was back', async () => {
    await planned();
    await deliver(AHEAD);
    const back = later(4 * DAY_MS);
    expect(await storage.nudges.undoEarly(back)).toBe(1);
    expect(await deliver(back)).toBe(1);
  });

  it('stay delivered where clocks differ by minutes, as those of several machines do', async () => {
    await planned();
    await deliver(due);
    expect(await storage.nudges.undoEarly(new Date(due.getTime() - 9 * MINUTE_MS))).toBe(0);
    expect(await storage.nudges.undoEarly(new Date(due.getTime() - 11 * MINUTE_MS))).toBe(1);
  });

  it('stay delivered where their stage was done meanwhile, or the run given up', async () => {
    await planned();
    await deliver(AHEAD);
    now = AHEAD;
    await planned([], plan([stage({ status: 'done' })]));
    expect(await storage.nudges.undoEarly(START)).toBe(0);
    await planned([], plan());
    const run = await storage.runs.get(workshopId, runId);
    await storage.runs.update(workshopId, runId, run?.version ?? 0, { state: 'abandoned' });
    expect(await storage.nudges.undoEarly(START)).toBe(0);
  });

  it('come again as a plan made since wants them, and once', async () => {
    await planned();
    await deliver(AHEAD);
    now = later(MINUTE_MS);
    expect(await planned()).toHaveLength(1);
    expect(await storage.nudges.undoEarly(now)).toBe(0);
    expect(await states()).toEqual(['delivered 1', 'waiting 1']);
    expect(await deliver(due)).toBe(1);
    expect(await storage.nudges.undoEarly(due)).toBe(0);
  });

  it('stay delivered where a plan made since does not want them any more', async () => {
    await planned();
    await deliver(AHEAD);
    now = later(MINUTE_MS);
    await planned([]);
    expect(await storage.nudges.undoEarly(now)).toBe(0);
  });

  it('come again no more than twice, though the clock of another machine stays ahead', async () => {
    await planned();
    for (const expected of [1, 1, 0]) {
      await deliver(AHEAD);
      expect(await storage.nudges.undoEarly(START)).toBe(expected);
    }
  });
});
