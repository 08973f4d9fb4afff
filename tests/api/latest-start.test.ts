import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { latestStartDocument, type CreatedRun, type PlannedStage } from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const order = { ...file.runs[0], readyBy: '2027-03-31' };
let bench: TestApi;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T12:00:00Z', file);
  await bench.stock(file);
});
afterAll(() => bench.close());

describe('the latest start over HTTP', () => {
  it('is told for an order of which no run is made, and a run made to begin then has those odds', async () => {
    const answer = await bench.call('POST', '/api/latest-start', { order, odds: 0.6 });
    expect(answer.status, JSON.stringify(answer.body)).toBe(200);
    const found = latestStartDocument.parse(answer.body);
    expect(found.status).toBe('found');
    expect(found.odds?.soundByTheDay).toBeGreaterThanOrEqual(0.6);
    expect((await bench.call('GET', '/api/runs')).body).toEqual([]);

    // Ireland is on UTC in winter, so the instant without its zone is the local time.
    const startAfter = (found.beginAt ?? '').slice(0, 16);
    const created = await bench.call('POST', '/api/runs', { ...order, startAfter });
    expect(created.status, JSON.stringify(created.body)).toBe(201);
    const { plan } = created.body as CreatedRun;
    expect(plan.document.odds).toEqual(found.odds);
    expect(plan.document.runs[0]?.stages).toEqual(found.plan.runs[0]?.stages);

    const beside = await bench.call('POST', '/api/latest-start', {
      order: { ...order, key: 'more' },
      odds: 0.6,
    });
    const stages = latestStartDocument.parse(beside.body).plan.runs[0]?.stages ?? [];
    expect(stages.length).toBeGreaterThan(0);
    const apart = (a: PlannedStage, b: PlannedStage): boolean => a.endAt <= b.startAt || b.endAt <= a.startAt;
    for (const mine of stages) {
      for (const other of found.plan.runs[0]?.stages ?? []) expect(apart(mine, other)).toBe(true);
    }
  });

  it('refuses an order without a day, and a design nobody knows, field by field', async () => {
    const dayless = await bench.call('POST', '/api/latest-start', { order: file.runs[0] });
    expect(dayless.status).toBe(422);
    expect(JSON.stringify(dayless.body)).toContain('order.readyBy');
    const unknown = await bench.call('POST', '/api/latest-start', { order: { ...order, design: 'teapot' } });
    expect(unknown.status).toBe(422);
    expect(JSON.stringify(unknown.body)).toContain('teapot');
  });
});
