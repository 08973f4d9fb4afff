import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { logAnswer, logEntry, planCause, planChange, planDocument, planRevision } from '#contract';
import { replan } from '#runs';
import { migrate, type PlanRevision, type Storage } from '#storage';
import { minuteOfIso } from '#units';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { loadRunFile } from '../support/run-files.js';

const MIGRATIONS = join(import.meta.dirname, '..', '..', 'prisma', 'migrations');
const MESSAGES = '20261127005500_messages';
const workshopId = '018f0000-0000-7000-8000-000000000001';
const runId = '018f0000-0000-7000-8000-000000000002';
const entryId = '018f0000-0000-7000-8000-000000000009';
const file = loadRunFile('ok', 'two-layer');
const order = { ...file.runs[0]!, readyBy: '2027-01-10' };

/** As the program of 26 November 2026 planned `two-layer`: at first, after its first entry, and where there is no plan. */
const older = JSON.parse(readFileSync(join(import.meta.dirname, 'older', 'plans-2.json'), 'utf8')) as Record<
  'planned' | 'logged' | 'conflict',
  { readonly document: { readonly status: string }; readonly changes: unknown[] }
> & { readonly entry: unknown };

let database: TestDatabase;
let storage: Storage;
beforeAll(async () => {
  database = await testDatabase({ migrated: false });
  const folder = mkdtempSync(join(tmpdir(), 'benchtide-test-older-'));
  cpSync(MIGRATIONS, folder, { recursive: true });
  const later = readdirSync(folder).filter((name) => /^\d/.test(name) && name >= MESSAGES);
  for (const name of later) rmSync(join(folder, name), { recursive: true });
  await migrate(database.url, () => undefined, { folder });
  rmSync(folder, { recursive: true });

  await database.sql(
    'INSERT INTO workshop (id, version, facts, created_at, updated_at) VALUES ($1, 1, $2, now(), now())',
    [workshopId, file.workshop],
  );
  const { designs, recipes, fats, moulds } = file;
  await database.sql(
    `INSERT INTO run (id, workshop_id, key, version, order_, snapshot, state, created_at, updated_at)
     VALUES ($1, $2, $3, 1, $4, $5, 'making', now(), now())`,
    [runId, workshopId, order.key, order, { design: designs[0], recipes, fats, moulds }],
  );
  await insertPlan(1, '2026-11-27T12:00:00Z', 'first plan', older.planned);
  await insertPlan(2, '2026-11-27T18:50:00Z', 'log: pour-under done', older.logged);
  await database.sql(
    `INSERT INTO bench_log (id, workshop_id, run_id, sequence, at, logged_at, entry)
     VALUES ($1, $2, $3, 1, '2026-11-27T18:50:00Z', '2026-11-27T18:50:01Z', $4)`,
    [entryId, workshopId, runId, older.entry],
  );
  await insertPlan(3, '2026-11-27T19:00:00Z', 'asked for', older.conflict);
  await insertPlan(4, '2026-11-27T19:10:00Z', 'change: cavities', {
    ...older.planned,
    document: { ...older.planned.document, schema: 'benchtide.plan/1', guarantee: undefined } as never,
  });
  await insertAnswers();
  await migrate(database.url, () => undefined);
  storage = await database.open();
});
afterAll(() => database.drop());

async function insertPlan(
  number: number,
  madeAt: string,
  cause: string,
  { document, changes }: { readonly document: { readonly status: string }; readonly changes: unknown[] },
): Promise<void> {
  await database.sql(
    `INSERT INTO plan_revision (id, workshop_id, run_id, number, made_at, cause, status, document, changes)
     VALUES (gen_random_uuid(), $1, $2, $3, $4, $5, $6, $7, $8)`,
    [workshopId, runId, number, madeAt, cause, document.status, document, JSON.stringify(changes)],
  );
}

/** One that holds its plan, and one that refers to it. */
async function insertAnswers(): Promise<void> {
  const entry = {
    ...{ id: entryId, sequence: 1, at: '2026-11-27T18:50:00.000Z', loggedAt: '2026-11-27T18:50:01.000Z' },
    entry: older.entry,
  };
  const why = '“Pour the lower layer” is done. Nothing moves.';
  const { document, changes } = older.logged;
  const plan = {
    number: 2,
    madeAt: entry.at,
    cause: 'log: pour-under done',
    status: 'planned',
    document,
    changes,
  };
  const insert = (key: string, response: object) =>
    database.sql(
      `INSERT INTO idempotency_key (workshop_id, key, request_hash, status, response, created_at)
       VALUES ($1, $2, 'hash', 201, $3, now())`,
      [workshopId, key, response],
    );
  await insert('whole', { entry, why, plan });
  await insert('rest', { entry, why });
  await insert('plan', plan);
}

const revision = async (number: number): Promise<PlanRevision> => {
  const found = await storage.plans.byNumber(workshopId, runId, number);
  if (found === null) throw new Error(`no plan ${String(number)}`);
  return found;
};

describe('a plan that held sentences', () => {
  it.each([1, 2, 3, 4])('is read as one of today: number %d', async (number) => {
    const { document, changes, cause } = await revision(number);
    expect(planDocument.safeParse(document).error).toBeUndefined();
    expect(planChange.array().safeParse(changes).error).toBeUndefined();
    expect(planCause.safeParse(cause).error).toBeUndefined();
  });

  it('keeps its times, odds and amounts, and what can still be told', async () => {
    const { document, cause, changes } = await revision(2);
    const was = planDocumentOf(older.logged.document);
    const [run] = document.runs;
    expect(run?.stages.map(({ key, startAt, status }) => [key, startAt, status])).toEqual(
      was.runs[0]?.stages.map(({ key, startAt, status }) => [key, startAt, status]),
    );
    // One fragrance without a name has become a list of named ones.
    const scents = [[{ key: 'fragrance', title: 'Sea air', massG: 12.5, hasAllergens: false }], []];
    expect(run?.amounts.map(({ batch }) => batch)).toEqual(
      was.runs[0]?.amounts.map(({ batch }, i) => {
        const { fragranceG: _one, ...rest } = batch as Record<string, unknown>;
        return { ...rest, fragrances: scents[i], allergens: [] };
      }),
    );
    // One figure, in which everything counted alike, stands for all three.
    const { probability, ...drawn } = was.odds as unknown as Record<string, number>;
    const three = { soundAtAll: probability, soundByTheDay: probability, asPlanned: probability };
    expect(document.odds).toEqual({ ...three, ...drawn });
    expect(probability).toBeGreaterThan(0);
    expect(document.weakLinks.map(({ stage, loses }) => [stage === 'ready', loses])).toEqual(
      was.weakLinks.map(({ stage }) => (stage === 'ready' ? [true, 'day'] : [false, 'pieces'])),
    );
    expect(run?.stages.find(({ status }) => status === 'done')?.why).toEqual([{ code: 'why.done' }]);
    expect(changes.find(({ change }) => change === 'done')?.why).toEqual([{ code: 'why.done' }]);
    expect(JSON.stringify(run?.amounts)).toContain('"code":"caution.lye"');
    expect(document.weakLinks.map(({ share }) => share)).toEqual(was.weakLinks.map(({ share }) => share));
    expect(document.weakLinks.find(({ stage }) => stage === 'pour-over')?.why).toMatchObject({
      stage: { run: 'cups', stage: 'pour-over', title: 'Pour the upper layer' },
    });
    expect(cause).toEqual({ code: 'cause.logged', entry: entryId, what: null });
    expect((await revision(1)).cause).toEqual({ code: 'cause.first-plan' });
    expect((await revision(4)).cause).toEqual({ code: 'cause.change', change: 'cavities' });
  });

  it('of the first version has no amounts, which had another shape', async () => {
    const { document } = await revision(4);
    expect(document.runs[0]).toMatchObject({ amounts: [], clocks: [], filling: [] });
    expect(document.guarantee).toBeNull();
  });

  it('is planned on from by the next entry', async () => {
    const { document: before } = await revision(2);
    const log = [
      { run: order.key, id: entryId, entry: logEntry.parse(older.entry) },
      {
        ...{ run: order.key, id: 'next' },
        entry: logEntry.parse({ kind: 'done', stage: 'pour-over', at: '2026-11-27T19:50:00Z' }),
      },
    ];
    const input = { ...file, runs: [order], log };
    const next = replan({ input, before, now: minuteOfIso('2026-11-27T19:50:00Z'), mustKeep: true });
    if (!next.ok) throw new Error(JSON.stringify(next.issues));
    expect(next.value.document.status).toBe('planned');
    expect(next.value.changes.map(({ stage, change }) => [stage, change])).toContainEqual([
      'pour-over',
      'done',
    ]);
  });
});

describe('an answer that is kept for a repeated request', () => {
  const kept = async (key: string): Promise<unknown> =>
    (
      await database.sql<{ response: unknown }>('SELECT response FROM idempotency_key WHERE key = $1', [key])
    )[0]?.response;

  it('holds no sentence any more', async () => {
    expect(logAnswer.safeParse(await kept('whole')).error).toBeUndefined();
    expect(planRevision.safeParse(await kept('plan')).error).toBeUndefined();
    expect(await kept('rest')).toMatchObject({ why: [], entry: { id: entryId } });
  });
});

/** What tests look at of a document of that time. */
function planDocumentOf(document: unknown): PlanRevision['document'] {
  return document as PlanRevision['document'];
}
