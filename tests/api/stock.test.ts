import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  gatherList,
  stockDocument,
  stockMoves,
  storedStockEntry,
  type CreatedRun,
  type GatherList,
  type StockDocument,
  type StockEntry,
} from '#contract';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
const workshop = {
  ...file.workshop,
  materials: file.workshop.materials.filter(({ key }) => key !== 'olive'),
};
let bench: TestApi;
let run: CreatedRun;
let made = 0;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', { ...file, workshop });
  const [order] = await bench.stock(file);
  run = (await bench.call('POST', '/api/runs', order)).body as CreatedRun;
});
afterAll(() => bench.close());

const nextId = (): string => `01900000-0000-7000-8000-${String((made += 1)).padStart(12, '0')}`;

function write(entry: StockEntry | Record<string, unknown>, id = nextId()): Promise<Answer> {
  return bench.call('POST', '/api/stock/entries', { id, entry });
}

async function stock(): Promise<StockDocument> {
  return stockDocument.parse((await bench.call('GET', '/api/stock')).body);
}

const olive = async () => (await stock()).materials.find(({ key }) => key === 'olive');

async function gather(): Promise<GatherList> {
  return gatherList.parse((await bench.call('GET', `/api/gather?runs=${run.run.id}`)).body);
}

const log = (entry: unknown): Promise<Answer> => bench.call('POST', `/api/runs/${run.run.id}/log`, entry);

describe('the stock over HTTP', () => {
  it('grows by what is bought, once however often it is sent', async () => {
    const entry = {
      kind: 'purchase',
      material: 'olive',
      title: 'Olive oil',
      amount: '5 kg',
      price: 32,
      at: '2026-11-27T16:00:00Z',
    };
    const id = nextId();
    const first = await write(entry, id);
    expect(first.status, JSON.stringify(first.body)).toBe(201);
    expect((await write(entry, id)).body).toEqual(first.body);
    expect(await olive()).toMatchObject({ onHand: 5000, bought: 5000, paid: { amount: 5000, price: 32 } });
    expect(await bench.count('stock_entry')).toBe(1);
    const other = await write({ ...entry, price: 33 }, id);
    expect([other.status, other.body.issues[0].code]).toEqual([422, 'stock.id-taken']);
    await expect(bench.sql('DELETE FROM stock_entry')).rejects.toThrow(/never changed or removed/);
  });

  it('is what a gather list has on hand, also of what the workshop did not know', async () => {
    const line = (await gather()).lines.find(({ key }) => key === 'olive');
    expect(line).toMatchObject({ onHand: 5000, toBuy: 0 });
  });

  it('falls by a batch that is logged, and rises when the entry is taken back', async () => {
    await bench.walkTo('2026-11-27T19:00:00Z', 120);
    const needed = (await gather()).lines.find(({ key }) => key === 'olive')?.needed ?? NaN;
    const done = await log({ kind: 'done', stage: 'pour-deep', at: '2026-11-27T18:40:00Z', confirmed: true });
    expect(done.status, JSON.stringify(done.body)).toBe(201);
    const after = await olive();
    expect(after?.usedByRuns).toBeGreaterThan(100);
    expect(after?.onHand).toBeCloseTo(5000 - (after?.usedByRuns ?? NaN), 9);
    const still = (await gather()).lines.find(({ key }) => key === 'olive');
    expect(still?.needed).toBeCloseTo(needed - (after?.usedByRuns ?? NaN), 6);
    expect(still?.onHand).toBeCloseTo(after?.onHand ?? NaN, 9);
    const answer = await bench.call('GET', '/api/stock/moves?material=olive');
    const { moves } = stockMoves.parse(answer.body);
    expect(moves.map(({ kind, part }) => [kind, part])).toEqual([
      ['made', 'Deep-blue layer'],
      ['purchase', undefined],
    ]);
    expect(moves[0]?.run?.title).toBe(run.run.order.title);
    await log({ kind: 'take-back', entry: done.body.entry.id, at: '2026-11-27T18:50:00Z' });
    expect((await olive())?.onHand).toBe(5000);
  });

  it('is set right by a count, from then on', async () => {
    await log({ kind: 'done', stage: 'pour-deep', at: '2026-11-27T18:40:00Z', confirmed: true });
    await write({ kind: 'count', material: 'olive', amount: 800, at: '2026-11-27T18:45:00Z' });
    expect(await olive()).toMatchObject({ onHand: 800, usedByRuns: 0, from: { amount: 800 } });
    const off = await write({
      kind: 'written-off',
      material: 'olive',
      amount: 300,
      at: '2026-11-27T18:50:00Z',
    });
    expect((await olive())?.onHand).toBe(500);
    await write({ kind: 'take-back', entry: off.body.id, at: '2026-11-27T18:55:00Z' });
    expect((await olive())?.onHand).toBe(800);
  });

  it('keeps leftovers, and lets a design press its shells from them', async () => {
    const dough = async () => (await gather()).lines.find(({ key }) => key === 'soap-dough');
    const before = await dough();
    const kept = await write({
      ...{
        kind: 'leftover-kept',
        title: 'Deep-blue layer',
        form: 'dough',
        massG: 90,
        run: 'harbour-market',
        part: 'deep',
      },
      ...{ madeAt: '2026-11-27T18:40:00Z', at: '2026-11-27T18:58:00Z' },
    });
    expect((await stock()).leftovers).toMatchObject([{ id: kept.body.id, massG: 90, part: 'deep' }]);
    const use = {
      kind: 'leftover-used',
      leftover: kept.body.id,
      massG: 60,
      material: 'soap-dough',
      at: '2026-11-27T18:59:00Z',
    };
    expect((await write(use)).status).toBe(201);
    expect((await stock()).leftovers).toMatchObject([{ massG: 30 }]);
    expect((await dough())?.onHand).toBeCloseTo((before?.onHand ?? 0) + 60, 9);
    const more = await write({ ...use, massG: 31 });
    expect([more.status, more.body.issues[0].path]).toEqual([422, 'entry.massG']);
  });

  it('refuses what has not happened yet, and says the ledger as it was written', async () => {
    const ahead = await write({ kind: 'count', material: 'olive', amount: 1, at: '2026-11-27T21:00:00Z' });
    expect([ahead.status, ahead.body.issues[0].code]).toEqual([422, 'log.in-the-future']);
    const entries = (await bench.call('GET', '/api/stock/entries')).body as unknown[];
    expect(entries.map((entry) => storedStockEntry.parse(entry).entry.kind)).toEqual([
      ...['purchase', 'count', 'written-off', 'take-back', 'leftover-kept', 'leftover-used'],
    ]);
  });
});
