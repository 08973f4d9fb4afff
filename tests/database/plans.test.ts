import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { DesiredNudge, Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { nudge, plan, planToSave, seedRun, stage } from '../support/database-samples.js';

let database: TestDatabase;
let storage: Storage;
let workshopId: string;
let runId: string;
let now: Date;
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ now: () => now });
});
beforeEach(async () => {
  now = new Date('2026-11-27T12:00:00.000Z');
  ({ workshopId, runId } = await seedRun(storage));
});
afterAll(() => database.drop());

async function save(nudges: DesiredNudge[], document = plan()) {
  const saved = await storage.plans.save(workshopId, planToSave(runId, nudges, document));
  if (saved === null) throw new Error('no such run');
  return saved;
}
const later = new Date('2026-11-27T19:30:00.000Z');

describe('plans.ofLiveRuns', () => {
  it('reads the latest plan of runs that need hands and moulds, and of no others', async () => {
    await save([]);
    const latest = plan([stage({ title: 'Pour again' })]);
    await save([], latest);
    const live = await storage.plans.ofLiveRuns(workshopId, null);
    expect(live).toMatchObject([{ runId, document: latest, order: { key: 'first-tide' } }]);
    expect(await storage.plans.ofLiveRuns(workshopId, runId)).toEqual([]);
    for (const [version, state, count] of [
      [1, 'making', 1],
      [2, 'curing', 0],
      [3, 'abandoned', 0],
    ] as const) {
      await storage.runs.update(workshopId, runId, version, { state });
      expect(await storage.plans.ofLiveRuns(workshopId, null)).toHaveLength(count);
    }
  });
});

describe('plans.save', () => {
  it('numbers revisions within the run and keeps every one', async () => {
    await save([]);
    const { revision } = await save([], plan([stage({ title: 'Pour again' })]));
    expect(revision.number).toBe(2);
    expect(await storage.plans.latest(workshopId, runId)).toEqual(revision);
    expect((await storage.plans.byNumber(workshopId, runId, 1))?.document).toEqual(plan());
    expect((await storage.plans.list(workshopId, runId)).map((head) => head.number)).toEqual([2, 1]);
  });

  it('numbers without a gap when many plans are saved at once', async () => {
    await Promise.all(Array.from({ length: 8 }, () => save([nudge()])));
    const numbers = (await storage.plans.list(workshopId, runId)).map((head) => head.number);
    expect(numbers).toEqual([8, 7, 6, 5, 4, 3, 2, 1]);
    expect(await storage.nudges.list(workshopId, { status: 'waiting' })).toHaveLength(1);
  });

  it('leaves nothing when a nudge cannot be stored', async () => {
    const bad = nudge({ attempt: 0 });
    await expect(save([nudge({ kind: 'last-call' }), bad])).rejects.toThrow();
    expect(await storage.plans.latest(workshopId, runId)).toBeNull();
    expect(await storage.nudges.list(workshopId)).toEqual([]);
  });

  it('leaves nothing, log included, when the transaction around it fails', async () => {
    const work = storage.withWorkshopLock(workshopId, async (tx) => {
      await tx.log.append(workshopId, runId, {
        kind: 'not-yet',
        stage: 'pour-base',
        at: later.toISOString(),
      });
      await tx.plans.save(workshopId, planToSave(runId, [nudge()]));
      throw new Error('power cut');
    });
    await expect(work).rejects.toThrow('power cut');
    expect(await storage.log.list(workshopId)).toEqual([]);
    expect(await storage.plans.latest(workshopId, runId)).toBeNull();
  });

  it('stores along what belongs to the step, and nothing of it where the run has moved on', async () => {
    const entry = { kind: 'not-yet', stage: 'pour-base', at: later.toISOString() } as const;
    const along = (version: number) => ({
      entry: { id: storage.log.nextId(), entry },
      state: { version, state: 'making' as const },
      answer: {
        ...{ key: `step-${String(version)}`, requestHash: 'hash', status: 201 },
        response: (logged: { sequence: number } | null) => ({ place: logged?.sequence }),
      },
    });
    const toSave = planToSave(runId, [nudge()]);
    const moved = storage.plans.save(workshopId, { ...toSave, along: along(7) });
    await expect(moved).rejects.toThrow('is at version 1');
    expect([await storage.log.list(workshopId), await storage.nudges.list(workshopId)]).toEqual([[], []]);

    const saved = await storage.plans.save(workshopId, { ...toSave, along: along(1) });
    expect(await storage.log.list(workshopId)).toEqual([saved?.logged]);
    expect(await storage.runs.head(workshopId, runId)).toMatchObject({ state: 'making', version: 2 });
    expect(await storage.plans.get(workshopId, saved?.revision.id ?? '')).toEqual(saved?.revision);
    expect(await storage.idempotency.find(workshopId, { key: 'step-1', requestHash: 'hash' })).toEqual({
      ...{ ok: true, status: 201, response: { place: saved?.logged?.sequence } },
      revisionId: saved?.revision.id,
    });
  });

  it('refuses a document that does not plan the run', async () => {
    await expect(save([], { ...plan(), runs: [] })).rejects.toThrow('"first-tide"');
  });
});

describe('nudges of a new plan', () => {
  it('are made, and told to be queued', async () => {
    const { moved, cancelled, revision } = await save([nudge()]);
    const [stored] = await storage.nudges.list(workshopId);
    expect(stored).toMatchObject({ ...nudge(), status: 'waiting', version: 1, run: 'first-tide', runId });
    expect(stored?.revisionId).toBe(revision.id);
    expect(moved).toEqual([{ id: stored?.id, version: 1, dueAt: nudge().dueAt }]);
    expect(cancelled).toEqual([]);
  });

  it('stay as they are when wanted just so, under the new revision', async () => {
    const before = await save([nudge()]);
    const { moved, cancelled, revision } = await save([nudge()]);
    expect([moved, cancelled]).toEqual([[], []]);
    const [stored] = await storage.nudges.list(workshopId);
    expect(stored).toMatchObject({ id: before.moved[0]?.id, version: 1, revisionId: revision.id });
  });

  it.each([
    ['time', { dueAt: later }],
    ['stage’s title', { title: 'Pour it' }],
    ['stage’s start', { startAt: later }],
    ['last call', { lastCallAt: later }],
  ])('move, keeping their id, when their %s changes', async (_, change) => {
    const before = await save([nudge()]);
    const { moved } = await save([nudge(change)]);
    expect(moved).toEqual([{ id: before.moved[0]?.id, version: 2, dueAt: nudge(change).dueAt }]);
    expect(await storage.nudges.list(workshopId)).toMatchObject([{ ...nudge(change), version: 2 }]);
  });

  it('are cancelled when not wanted any more, and can be wanted again', async () => {
    const before = await save([nudge()]);
    const id = before.moved[0]?.id;
    expect((await save([])).cancelled).toEqual([{ id, version: 1 }]);
    expect((await save([])).cancelled).toEqual([]);
    const again = await save([nudge()]);
    expect(again.moved).toHaveLength(1);
    expect(again.moved[0]?.id).not.toBe(id);
    expect(await storage.nudges.list(workshopId, { status: 'waiting' })).toHaveLength(1);
  });

  it('are not made again for a time at which one was delivered, but are for another time', async () => {
    const { moved } = await save([nudge()]);
    await storage.nudges.claim(moved[0]?.id ?? '', 1, later);
    now = later;
    expect((await save([nudge({ title: 'Other words' })])).moved).toEqual([]);
    expect((await save([nudge({ dueAt: later })])).moved).toHaveLength(1);
    expect(await storage.nudges.list(workshopId, { status: 'delivered' })).toHaveLength(1);
  });

  it('are not repeated within the hour, and stay where they are overdue for an open stage', async () => {
    const due = nudge().dueAt.getTime();
    const { moved } = await save([nudge()]);
    await storage.nudges.claim(moved[0]?.id ?? '', 1, later);
    now = later;
    expect((await save([nudge({ dueAt: new Date(due + 59 * 60_000) })])).moved).toEqual([]);
    const overdue = nudge({ kind: 'last-call', dueAt: new Date('2020-01-01T00:00:00.000Z') });
    await save([overdue]);
    expect((await save([])).cancelled).toEqual([]);
    expect((await save([], plan([stage({ status: 'done' })]))).cancelled).toHaveLength(1);
  });

  it('are told apart by stage, attempt and kind', async () => {
    const four = [nudge(), nudge({ kind: 'last-call' }), nudge({ attempt: 2 }), nudge({ stage: 'turn' })];
    expect((await save(four)).moved).toHaveLength(4);
    expect((await save(four.slice(1))).cancelled).toHaveLength(1);
  });

  it('of another run stay untouched, and all of a run can be cancelled', async () => {
    await save([nudge()]);
    const other = await seedRun(storage);
    await storage.plans.save(other.workshopId, planToSave(other.runId, [nudge()]));
    expect(await storage.nudges.cancelForRun(workshopId, runId)).toHaveLength(1);
    expect(await storage.nudges.list(other.workshopId, { status: 'waiting' })).toHaveLength(1);
  });

  it('that were delivered stay so when all of a run are cancelled', async () => {
    const { moved } = await save([nudge()]);
    await storage.nudges.claim(moved[0]?.id ?? '', 1, later);
    await save([nudge({ stage: 'turn' })]);
    expect(await storage.nudges.cancelForRun(workshopId, runId)).toHaveLength(1);
    expect(await storage.nudges.list(workshopId, { status: 'delivered' })).toHaveLength(1);
  });

  it('refuses two waiting ones for the same thing, even past the repositories', async () => {
    const { moved } = await save([nudge()]);
    const copy = `INSERT INTO nudge SELECT gen_random_uuid(), workshop_id, run_id, revision_id, stage_key,
      attempt, kind, due_at, status, version, inbox_sequence, delivered_at, early_deliveries, title FROM nudge WHERE id = $1`;
    await expect(database.sql(copy, [moved[0]?.id])).rejects.toThrow('nudge_one_waiting');
  });
});
