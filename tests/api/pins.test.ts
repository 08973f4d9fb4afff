import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createdRun, planRevision, type PlanView } from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
let bench: TestApi;
let runId: string;
let first: PlanView;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T12:00:00Z', file);
  await bench.stock(file);
  const { run, plan } = createdRun.parse((await bench.call('POST', '/api/runs', file.runs[0])).body);
  [runId, first] = [run.id, plan];
});
afterAll(() => bench.close());

const stageOf = (plan: PlanView, key: string) =>
  plan.document.runs[0]?.stages.find((stage) => stage.key === key);

describe('a stage that is put elsewhere', () => {
  it('is there in the next plan, and stays there in the one after', async () => {
    const was = Date.parse(stageOf(first, 'turn')?.startAt ?? '');
    const startAt = new Date(was + 20 * 60_000).toISOString();
    const put = await bench.call('POST', `/api/runs/${runId}/plan`, { pins: [{ stage: 'turn', startAt }] });
    expect(put.status, JSON.stringify(put.body)).toBe(201);
    const plan = planRevision.parse(put.body);
    expect(stageOf(plan, 'turn')?.startAt).toBe(startAt);
    expect(plan.changes).toMatchObject([{ stage: 'turn', change: 'later', toAt: startAt }]);
    const again = planRevision.parse((await bench.call('POST', `/api/runs/${runId}/plan`, {})).body);
    expect(stageOf(again, 'turn')?.startAt).toBe(startAt);
  });

  it('goes back where it is best once the run is planned afresh', async () => {
    const afresh = await bench.call('POST', `/api/runs/${runId}/plan`, { afresh: true });
    const plan = planRevision.parse(afresh.body);
    expect(stageOf(plan, 'turn')?.startAt).toBe(stageOf(first, 'turn')?.startAt);
    expect(plan.changes).toMatchObject([{ stage: 'turn', change: 'earlier' }]);
  });

  it('is refused with the reasons where it cannot be, and the plan stays', async () => {
    const before = (await bench.call('GET', `/api/runs/${runId}/plan`)).body;
    // Half past three at night is in nobody's hours here.
    const pins = [{ stage: 'turn', startAt: '2026-11-30T03:30:00.000Z' }];
    const answer = await bench.call('POST', `/api/runs/${runId}/plan`, { pins });
    expect(answer.status).toBe(422);
    expect(JSON.stringify(answer.body.issues)).toContain('plan.pins-impossible');
    expect((await bench.call('GET', `/api/runs/${runId}/plan`)).body).toEqual(before);
    const unknown = await bench.call('POST', `/api/runs/${runId}/plan`, {
      pins: [{ stage: 'fly', startAt: '2026-11-30T19:00:00Z' }],
    });
    expect(unknown.body).toMatchObject({ issues: [{ path: 'pins[0].stage', value: 'fly' }] });
  });
});
