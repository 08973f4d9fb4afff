import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  amountsDocument,
  gatherList,
  type AmountsDocument,
  type CreatedRun,
  type GatherList,
  type LogAnswer,
  type PlanView,
} from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
const [order] = file.runs;
let bench: TestApi;
let run: CreatedRun;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  await bench.stock(file);
  const created = await bench.call('POST', '/api/runs', order);
  expect(created.status).toBe(201);
  run = created.body as CreatedRun;
});
afterAll(() => bench.close());

async function sheetOf(path: string, body?: unknown): Promise<AmountsDocument> {
  const answer = await bench.call(body === undefined ? 'GET' : 'POST', path, body);
  expect(answer.status, JSON.stringify(answer.body)).toBe(200);
  return amountsDocument.parse(answer.body);
}

const part = (sheet: AmountsDocument, key: string) =>
  sheet.runs[0]?.amounts.find((amounts) => amounts.part === key);

describe('batch sheets over HTTP', () => {
  it('show for a run what its plan shows, with gathering and cost', async () => {
    const sheet = await sheetOf(`/api/runs/${run.run.id}/amounts`);
    const plan = (await bench.call('GET', `/api/runs/${run.run.id}/plan`)).body as PlanView;
    expect(sheet.runs[0]?.amounts).toEqual(plan.document.runs[0]?.amounts);
    expect(sheet.gather.lines.find(({ kind }) => kind === 'lye')?.cautions[0]?.code).toBe(
      'caution.lye-keeping',
    );
    expect(sheet.runs[0]?.cost.currency).toBe('EUR');
  });

  it('hold one lye for a swirl in three colours and its top', async () => {
    const sheet = await sheetOf('/api/amounts-preview', loadRunFile('ok', 'swirl-loaf'));
    const [swirl] = sheet.runs;
    expect(swirl?.batches).toHaveLength(1);
    const [batch] = swirl?.batches ?? [];
    expect(batch?.portions.map(({ title }) => title)).toEqual(['White', 'Blue', 'Green', 'Top']);
    expect(batch?.cautions.filter(({ code }) => code === 'caution.lye')).toHaveLength(1);
    const lye = sheet.gather.lines.find(({ key }) => key === 'naoh');
    expect(lye?.needed).toBeCloseTo(batch?.amounts.naohG ?? NaN, 9);
  });

  it('tell melted base by the cavities it is cast in', async () => {
    const sheet = await sheetOf('/api/amounts-preview', loadRunFile('ok', 'melt-embeds'));
    expect(part(sheet, 'stars')).toMatchObject({ neededMl: 144, material: 'clear-base' });
    const base = sheet.gather.lines.find(({ key }) => key === 'clear-base');
    expect(base).toMatchObject({ needed: part(sheet, 'stars')?.massG, onHand: 50 });
  });

  it('answer “and for 26?” without making a run', async () => {
    const sheet = await sheetOf('/api/amounts', { ...order, count: 26 });
    const before = await sheetOf('/api/amounts', order);
    expect(part(sheet, 'foam')?.batch?.batchG).toBeGreaterThan(part(before, 'foam')?.batch?.batchG ?? NaN);
    expect(part(sheet, 'foam')?.cover.shortageChance).toBeLessThanOrEqual(0.05 + 1e-9);
    const runs = (await bench.call('GET', '/api/runs')).body as unknown[];
    expect(runs).toHaveLength(1);
  });

  it('come from a run file as well', async () => {
    const sheet = await sheetOf('/api/amounts-preview', file);
    expect(sheet.gather.lines.length).toBeGreaterThan(10);
  });

  it('gather for several runs together', async () => {
    const second = await bench.call('POST', '/api/runs', {
      ...order,
      key: 'second',
      startAfter: '2026-12-11T18:00',
      readyBy: undefined,
    });
    expect(second.status, JSON.stringify(second.body)).toBe(201);
    const secondId = (second.body as CreatedRun).run.id;
    const gathered = async (query: string): Promise<GatherList> => {
      const answer = await bench.call('GET', `/api/gather${query}`);
      expect(answer.status, JSON.stringify(answer.body)).toBe(200);
      return gatherList.parse(answer.body);
    };
    const needed = (list: GatherList) => list.lines.find(({ key }) => key === 'naoh')?.needed ?? NaN;
    const [one, other] = [await gathered(`?runs=${run.run.id}`), await gathered(`?runs=${secondId}`)];
    const both = await gathered('');
    expect(both.runs).toHaveLength(2);
    expect(needed(both)).toBeCloseTo(needed(one) + needed(other), 9);
    expect((await gathered(`?runs=${run.run.id},${secondId}`)).lines).toEqual(both.lines);
  });

  it.each([
    ['/api/gather?runs=nonsense', 422],
    ['/api/gather?runs=018f0000-0000-7000-8000-000000000000', 404],
    ['/api/runs/018f0000-0000-7000-8000-000000000000/amounts', 404],
  ])('refuse %s with %d', async (path, status) => {
    expect((await bench.call('GET', path)).status).toBe(status);
  });

  it('learn from what was weighed, in this run and in the next of its design', async () => {
    const before = await sheetOf('/api/amounts', order);
    const made = await bench.call('POST', `/api/runs/${run.run.id}/log`, {
      kind: 'done',
      stage: 'pour-deep',
      at: '2026-11-27T15:50:00Z',
    });
    expect(made.status, JSON.stringify(made.body)).toBe(201);
    const answer = await bench.call('POST', `/api/runs/${run.run.id}/log`, {
      kind: 'weighed',
      part: 'deep',
      pieces: 24,
      usedG: 24 * 52,
      at: '2026-11-27T16:00:00Z',
    });
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    expect((answer.body as LogAnswer).why[0]).toMatchObject({
      code: 'logged.weighed',
      pieces: 24,
      usedG: 1248,
    });
    const after = await sheetOf('/api/amounts', order);
    expect(part(after, 'deep')?.batch?.batchG).toBeGreaterThan(part(before, 'deep')?.batch?.batchG ?? NaN);
    expect(part(after, 'deep')?.perPiece?.learned).toMatchObject({ weighings: 1, pieces: 24 });
  });

  it('refuse a weighing that cannot be, and keep nothing of it', async () => {
    const answer = await bench.call('POST', `/api/runs/${run.run.id}/log`, {
      kind: 'weighed',
      part: 'deep',
      pieces: 24,
      usedG: 12,
      at: '2026-11-27T16:00:00Z',
    });
    expect(answer.status).toBe(422);
    expect(answer.body).toMatchObject({ issues: [{ path: 'usedG', value: 12 }] });
  });

  it('question a fat whose saponification value looks like NaOH, and take it once it is confirmed', async () => {
    const fat = {
      key: 'village-olive',
      title: 'Village olive oil (invented)',
      saponificationMgKohPerG: { low: 134, used: 135, high: 136 },
      fattyAcidsPercent: { 'C16:0': 12, 'C18:0': 3, 'C18:1': 74, 'C18:2': 10 },
      densityGPerMl: 0.914,
      source: 'invented sheet',
    };
    const asked = await bench.call('POST', '/api/fats', fat);
    expect(asked.status).toBe(422);
    expect(asked.body).toMatchObject({ issues: [{ code: 'fat.saponification-as-naoh', value: 135 }] });
    expect((await bench.call('POST', '/api/fats', { ...fat, confirmed: true })).status).toBe(201);
  });
});
