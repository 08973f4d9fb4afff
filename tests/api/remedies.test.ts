import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  remediesDocument,
  type CreatedRun,
  type LogAnswer,
  type PlanView,
  type RemediesDocument,
} from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('demo', 'honeycomb-tartlets');
let bench: TestApi;
let run: CreatedRun;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  const [order] = await bench.stock(file);
  run = (await bench.call('POST', '/api/runs', order)).body as CreatedRun;
});
afterAll(() => bench.close());

async function remediesOf(id: string): Promise<RemediesDocument> {
  const answer = await bench.call('GET', `/api/runs/${id}/remedies`);
  expect(answer.status, JSON.stringify(answer.body)).toBe(200);
  return remediesDocument.parse(answer.body);
}

describe('remedies over HTTP', () => {
  it('help the plan that the run has, and change nothing', async () => {
    const plans = await bench.count('plan_revision');
    const { remedies, odds } = await remediesOf(run.run.id);
    expect(odds).toEqual(run.plan.document.odds);
    expect(remedies.length).toBeGreaterThan(0);
    expect(remedies.length).toBeLessThanOrEqual(5);
    expect(await bench.count('plan_revision')).toBe(plans);
  });

  it('stand beside the conflict of a run that has no plan', async () => {
    const order = { ...file.runs[0], key: 'too-many', count: 19 };
    const made = (await bench.call('POST', '/api/runs', order)).body as CreatedRun;
    expect(made.plan.status).toBe('conflict');
    const { planStatus, odds, remedies } = await remediesOf(made.run.id);
    expect({ planStatus, odds }).toEqual({ planStatus: 'conflict', odds: null });
    expect(remedies[0]?.does[0]?.code).toBe('remedy.makes-plan');
    expect(remedies[0]?.does[0]?.text).toContain('Makes a plan possible');
    expect(remedies.map(({ change }) => change.kind)).toContain('count');
    await bench.call('DELETE', `/api/runs/${made.run.id}`);
    expect((await bench.call('GET', `/api/runs/${made.run.id}/remedies`)).status).toBe(409);
  });

  it('that leave a part out can be logged as they are told', async () => {
    const { remedies } = await remediesOf(run.run.id);
    const change = remedies.map((each) => each.change).find(({ kind }) => kind === 'drop-parts');
    if (change?.kind !== 'drop-parts')
      throw new Error(JSON.stringify(remedies.map(({ title }) => title.code)));
    for (const entry of change.entries) {
      expect(entry).toMatchObject({ onPurpose: true, response: 'drop-part' });
      const answer = await bench.call('POST', `/api/runs/${run.run.id}/log`, entry);
      expect(answer.status, JSON.stringify(answer.body)).toBe(201);
      expect((answer.body as LogAnswer).why[0]).toMatchObject({ code: 'logged.left-out' });
    }
    const plan = (await bench.call('GET', `/api/runs/${run.run.id}/plan`)).body as PlanView;
    expect(plan.document.runs[0]?.stages.map(({ key }) => key)).not.toContain('dip');
  });

  it.each([
    ['nonsense', 422],
    ['018f0000-0000-7000-8000-000000000000', 404],
  ])('of %s are refused with %d', async (id, status) => {
    expect((await bench.call('GET', `/api/runs/${id}/remedies`)).status).toBe(status);
  });
});
