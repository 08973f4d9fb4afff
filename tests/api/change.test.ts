import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { CreatedRun, PlanView, RemedyChange, WhatIfAnswer } from '#contract';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
let bench: TestApi;
let run: CreatedRun;
let made = 0;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  await bench.stock(file);
});
afterAll(() => bench.close());
// Each change is about a run of its own, alone at the bench.
beforeEach(async () => {
  if (run !== undefined) await bench.call('DELETE', `/api/runs/${run.run.id}`);
  made += 1;
  const order = { ...file.runs[0], key: `run-${String(made)}` };
  run = (await bench.call('POST', '/api/runs', order)).body as CreatedRun;
});

const carry = (change: RemedyChange, headers?: Record<string, string>): Promise<Answer> =>
  bench.call('POST', `/api/runs/${run.run.id}/change`, { change }, headers);

/** The plan that trying the change shows, and the one that carrying it out makes. */
async function bothPlans(change: RemedyChange): Promise<{ tried: WhatIfAnswer; kept: PlanView }> {
  const tried = (await bench.call('POST', `/api/runs/${run.run.id}/what-if`, { change }))
    .body as WhatIfAnswer;
  const answer = await carry(change);
  expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  return { tried, kept: answer.body as PlanView };
}

describe('a change that is carried out', () => {
  it('makes the plan that was tried, in the run’s own copies', async () => {
    const changes: RemedyChange[] = [
      { kind: 'recipe', recipe: 'tile-base', lyeConcentrationPercent: 33 },
      { kind: 'start', run: run.run.key, startAfter: '2026-11-28T09:00' },
      { kind: 'count', run: run.run.key, count: 18 },
      { kind: 'ready-by', run: run.run.key, readyBy: '2027-01-30' },
    ];
    for (const change of changes) {
      const { tried, kept } = await bothPlans(change);
      expect(kept.document.odds, change.kind).toEqual(tried.plan.odds);
      expect(kept.document.runs, change.kind).toEqual(tried.plan.runs);
      expect(kept.cause).toMatchObject({ code: 'cause.change', change: change.kind });
    }
    const { order } = (await bench.call('GET', `/api/runs/${run.run.id}`)).body;
    expect(order).toMatchObject({ count: 18, startAfter: '2026-11-28T09:00', readyBy: '2027-01-30' });
    const recipes = (await bench.call('GET', '/api/recipes')).body;
    expect(JSON.stringify(recipes)).not.toContain('"lyeConcentrationPercent":33');
  });

  it('changes hours and moulds for the whole workshop', async () => {
    const spans = [{ from: '06:00', to: '07:00' }];
    const hours: RemedyChange = { kind: 'hours', added: spans[0]!, date: '2026-11-28', spans };
    const { tried, kept } = await bothPlans(hours);
    expect(kept.document.odds).toEqual(tried.plan.odds);
    expect((await bench.call('GET', '/api/workshop')).body.facts.hours.exceptions).toEqual([
      { date: '2026-11-28', spans },
    ]);
    expect((await carry({ kind: 'cavities', mould: 'hexagon', cavities: 30 })).status).toBe(201);
    const moulds = (await bench.call('GET', '/api/moulds')).body as {
      content: { key: string; cavities: number };
    }[];
    expect(moulds.find(({ content }) => content.key === 'hexagon')?.content.cavities).toBe(30);
  });

  it('leaves parts out by the log, and splits a run in two', async () => {
    const at = '2026-11-27T17:00:00.000Z';
    const dropped = await carry({
      kind: 'drop-parts',
      run: run.run.key,
      entries: [{ kind: 'mishap', part: 'foam', mishap: 'ran-short', response: 'drop-part', at }],
    });
    expect(dropped.body.document.runs[0].stages.map(({ key }: { key: string }) => key)).not.toContain(
      'pipe-foam',
    );
    expect((await bench.call('GET', `/api/runs/${run.run.id}/log`)).body).toHaveLength(1);
    const runs = await bench.count('run');
    const rest = { ...run.run.order, key: `rest-${String(made)}`, count: 10 };
    expect((await carry({ kind: 'split', run: run.run.key, count: 14, rest })).status).toBe(201);
    expect(await bench.count('run')).toBe(runs + 1);
    const all = (await bench.call('GET', '/api/runs')).body as { id: string; key: string }[];
    const second = all.find(({ key }) => key === rest.key)!;
    expect((await bench.call('GET', `/api/runs/${second.id}/plan`)).body.document.runs[0].count).toBe(10);
    await bench.call('DELETE', `/api/runs/${second.id}`);
  });

  it('is carried out once for one idempotency key', async () => {
    const headers = { 'Idempotency-Key': '0b0e7a52-58a5-4f0a-9a53-0d7a4d3a2a01' };
    const first = await carry({ kind: 'plan-anew' }, headers);
    const again = await carry({ kind: 'plan-anew' }, headers);
    expect(again.body).toEqual(first.body);
    expect((await bench.call('GET', `/api/runs/${run.run.id}/plans`)).body).toHaveLength(2);
  });
});

describe('a change that cannot be', () => {
  it('is about another run', async () => {
    const other = await carry({ kind: 'count', run: 'somebody-else', count: 3 });
    expect(other.status).toBe(422);
    expect(other.body.issues[0]).toMatchObject({ code: 'change.no-such-run', path: 'change.run' });
  });

  it('comes too late for what is poured', async () => {
    const done = { kind: 'done', stage: 'press-shells', at: '2026-11-27T17:00:00Z' };
    expect((await bench.call('POST', `/api/runs/${run.run.id}/log`, done)).status).toBe(201);
    const late = await carry({ kind: 'count', run: run.run.key, count: 12 });
    expect(late.status).toBe(409);
    expect((await carry({ kind: 'ready-by', run: run.run.key, readyBy: '2027-02-20' })).status).toBe(201);
  });
});
