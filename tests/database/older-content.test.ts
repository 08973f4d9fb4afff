import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { migrate, type Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { facts, order, seedRun } from '../support/database-samples.js';

const MIGRATIONS = join(import.meta.dirname, '..', '..', 'prisma', 'migrations');
const workshopId = '018f0000-0000-7000-8000-000000000001';
const runId = '018f0000-0000-7000-8000-000000000002';

/** As the first version wrote it: decor with a spread, no losses, no certainty, water as a concentration. */
const design = {
  key: 'plain-tile',
  title: 'Plain tile',
  looksEdible: false,
  parts: [
    {
      key: 'base',
      kind: 'batch',
      title: 'Base',
      recipe: 'base',
      perPieceMl: 80,
      lossG: 20,
      spreadPercent: 0,
      piecesPerCavity: 1,
    },
    {
      key: 'shells',
      kind: 'decor',
      title: 'Shells',
      perPiece: 3,
      spreadPercent: 4,
      eachG: 0.005,
    },
    {
      key: 'dots',
      kind: 'melt-and-pour',
      title: 'Dots',
      perPieceMl: 0.005,
      lossG: 10,
      spreadPercent: 4,
    },
  ],
  stages: [
    {
      key: 'pour-base',
      title: 'Pour',
      kind: 'pour',
      part: 'base',
      setupMin: 0,
      perPieceS: 0,
      needs: [],
    },
  ],
  links: [],
  waits: [],
};
const recipe = {
  key: 'base',
  title: 'Base',
  fats: [{ fat: 'olive', percent: 100 }],
  lyeConcentrationPercent: 35,
  superfatPercent: 5,
  naohPurityPercent: 100,
  sodiumLactatePercent: 2,
  saltPercent: 0,
  sugarPercent: 0,
  fragrance: { percent: 3, behaviour: 'brisk', vanillinPercent: 1 },
  batterTemperatureC: 38,
  mixing: 'blender',
  gel: 'none',
};
const fat = {
  key: 'own-olive',
  title: 'Own olive',
  saponificationMgKohPerG: { low: 184, used: 190, high: 196 },
  fattyAcidsPercent: { 'C18:1': 70 },
  densityGPerMl: 0.914,
  source: 'sheet',
};
const wax = { ...fat, key: 'own-wax', title: 'Own wax', fattyAcidsPercent: {} };
const mould = {
  key: 'dots',
  title: 'Dots',
  kind: 'silicone-cavity',
  cavityMl: 0.05,
  cavities: 40,
};
const { certaintyPercent: _later, ...olderOrder } = order;

let database: TestDatabase;
let storage: Storage;
beforeAll(async () => {
  database = await testDatabase({ migrated: false });
  const folder = mkdtempSync(join(tmpdir(), 'benchtide-test-older-'));
  cpSync(MIGRATIONS, folder, { recursive: true });
  const [, ...later] = readdirSync(folder)
    .filter((name) => /^\d/.test(name))
    .sort();
  for (const name of later) rmSync(join(folder, name), { recursive: true });
  await migrate(database.url, () => undefined, { folder });
  rmSync(folder, { recursive: true });

  const { materials: _new, ...olderFacts } = facts;
  await database.sql('INSERT INTO workshop VALUES ($1, 1, $2, now(), now())', [workshopId, olderFacts]);
  const insert = (table: string, content: { key: string }) =>
    database.sql(`INSERT INTO ${table} VALUES (gen_random_uuid(), $1, $2, 1, $3, now(), now(), NULL)`, [
      workshopId,
      content.key,
      content,
    ]);
  await insert('piece_design', design);
  await insert('recipe', recipe);
  await insert('fat', fat);
  await insert('mould', mould);
  const snapshot = { design, recipes: [recipe], fats: [fat, wax], moulds: [mould] };
  await database.sql("INSERT INTO run VALUES ($1, $2, $3, 1, $4, $5, 'planned', now(), now())", [
    runId,
    workshopId,
    olderOrder.key,
    olderOrder,
    snapshot,
  ]);
  await insertNudges();
  await migrate(database.url, () => undefined);
  storage = await database.open();
});
afterAll(() => database.drop());

/** As the first version wrote them: with their sentence, about a stage of the plan and about one that it does not have. */
async function insertNudges(): Promise<void> {
  const times = { startAt: '2026-11-27T18:10:00.000Z', lastCallAt: '2026-11-27T20:45:00.000Z' };
  const planned = { key: 'pour-base', attempt: 1, title: 'Pour it', ...times };
  const again = { ...planned, attempt: 2, title: 'Pour it again', lastCallAt: null };
  const document = { runs: [{ run: 'another' }, { run: olderOrder.key, stages: [again, planned] }] };
  const revisionId = '018f0000-0000-7000-8000-000000000003';
  await database.sql(
    `INSERT INTO plan_revision (id, workshop_id, run_id, number, made_at, cause, status, document, changes)
     VALUES ($1, $2, $3, 1, now(), 'older', 'planned', $4, '[]')`,
    [revisionId, workshopId, runId, document],
  );
  const insert = (stage: string, attempt: number, kind: string) =>
    database.sql(
      `INSERT INTO nudge (id, workshop_id, run_id, revision_id, stage_key, attempt, kind, text, due_at, status)
       VALUES (gen_random_uuid(), $1, $2, $3, $4, $5, $6, 'Pour it now.', '2026-11-27T18:10:00Z', 'waiting')`,
      [workshopId, runId, revisionId, stage, attempt, kind],
    );
  await insert('pour-base', 1, 'time-for-it');
  await insert('pour-base', 2, 'time-for-it');
  await insert('pour-base', 3, 'time-for-it');
  await insert('gone', 1, 'last-call');
}

describe('what the first version stored', () => {
  it('has nudges that know what they say, as far as their plan or the design does', async () => {
    const startAt = new Date('2026-11-27T18:10:00.000Z');
    const found = await storage.nudges.list(workshopId);
    const by = (stage: string, attempt: number) =>
      found.find((each) => each.stage === stage && each.attempt === attempt);
    const lastCallAt = new Date('2026-11-27T20:45:00.000Z');
    expect(by('pour-base', 1)).toMatchObject({ title: 'Pour it', startAt, lastCallAt });
    expect(by('pour-base', 2)).toMatchObject({ title: 'Pour it again', startAt, lastCallAt: null });
    expect(by('pour-base', 3)).toMatchObject({ title: 'Pour', startAt: null, lastCallAt: null });
    expect(by('gone', 1)).toMatchObject({ title: 'gone', startAt: null, lastCallAt: null });
  });

  it('is read with what was added since at its default', async () => {
    const run = await storage.runs.get(workshopId, runId);
    expect(run?.order.certaintyPercent).toBe(95);
    expect(run?.snapshot.recipes[0]).toMatchObject({
      lyeConcentrationPercent: 35,
      kohSharePercent: 0,
      acids: [],
      liquids: [],
    });
    const [stored] = await storage.library.recipes.list(workshopId);
    expect(stored?.content).toEqual(run?.snapshot.recipes[0]);
    expect((await storage.workshops.get(workshopId))?.facts.materials).toEqual([]);
  });

  it('has decor that breaks instead of spreading, in the library and in runs', async () => {
    const run = await storage.runs.get(workshopId, runId);
    const [stored] = await storage.library.designs.list(workshopId);
    for (const parts of [run?.snapshot.design.parts, stored?.content.parts]) {
      expect(parts?.map(({ key }) => key)).toEqual(['base', 'shells', 'dots']);
      expect(parts?.[2]).toMatchObject({ perPieceMl: 0.01 });
      expect(parts?.[1]).toEqual({
        key: 'shells',
        kind: 'decor',
        title: 'Shells',
        perPiece: 3,
        breakagePercent: 4,
        eachG: 0.01,
      });
      expect(parts?.[0]).toMatchObject({ spreadPercent: 0.1, lossG: 20, colourants: [] });
    }
  });

  it('has runs that wait for nothing they were not planned with, and designs that take what their kinds bring', async () => {
    const run = await storage.runs.get(workshopId, runId);
    const [stored] = await storage.library.designs.list(workshopId);
    expect(run?.snapshot.design).toMatchObject({ adds: 'firmness', without: [] });
    expect(stored?.content).toMatchObject({ adds: 'all', without: [] });
    // Nobody pours in no time: the zeros were what was filled in.
    expect(run?.snapshot.design.stages[0]).toMatchObject({ setupMin: 0, perPieceS: 0 });
    expect(stored?.content.stages[0]?.setupMin).toBeUndefined();
  });

  it('has the one fragrance of a recipe in a list, with a name', async () => {
    const run = await storage.runs.get(workshopId, runId);
    const [stored] = await storage.library.recipes.list(workshopId);
    for (const each of [stored?.content, run?.snapshot.recipes[0]]) {
      expect(each?.fragrances).toMatchObject([
        { key: 'fragrance', title: 'Fragrance', percent: 3, behaviour: 'brisk', vanillinPercent: 1 },
      ]);
      expect(each?.size).toEqual({ by: 'pieces' });
    }
  });

  it('has fats that were in use and are not questioned again, and cavities of a size that can be', async () => {
    const run = await storage.runs.get(workshopId, runId);
    const [storedFat] = await storage.library.fats.list(workshopId);
    const [storedMould] = await storage.library.moulds.list(workshopId);
    expect(storedFat?.content.confirmed).toBe(true);
    expect(run?.snapshot.fats.map(({ confirmed, kind }) => [confirmed, kind])).toEqual([
      [true, undefined],
      [true, 'wax'],
    ]);
    for (const each of [storedMould?.content, run?.snapshot.moulds[0]]) expect(each?.cavityMl).toBe(0.1);
  });

  it('is read where it is out of bounds that came later', async () => {
    const { runId: other, workshopId: workshop } = await seedRun(storage);
    const kept = { ...order, startAfter: '0001-01-01T00:00', count: 9000 };
    await database.sql('UPDATE run SET order_ = $2 WHERE id = $1', [other, kept]);
    expect((await storage.runs.get(workshop, other))?.order).toEqual(kept);
    const wide = await storage.library.moulds.create(workshop, {
      ...mould,
      kind: 'lined-wood',
      cavityMl: 90,
    });
    const id = wide.ok ? wide.value.id : '';
    await database.sql('UPDATE mould SET content = $2 WHERE id = $1', [id, { ...mould, cavities: 20_000 }]);
    expect((await storage.library.moulds.get(workshop, id))?.content).toEqual({ ...mould, cavities: 20_000 });
  });
});
