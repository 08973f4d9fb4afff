import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { whatIfAnswer, type CreatedRun, type PlanView, type WhatIf, type WhatIfAnswer } from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
let bench: TestApi;
let run: CreatedRun;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  const [order] = await bench.stock(file);
  run = (await bench.call('POST', '/api/runs', order)).body as CreatedRun;
});
afterAll(() => bench.close());

async function tried(wish: Partial<WhatIf>): Promise<WhatIfAnswer> {
  const answer = await bench.call('POST', `/api/runs/${run.run.id}/what-if`, wish);
  expect(answer.status, JSON.stringify(answer.body)).toBe(200);
  return whatIfAnswer.parse(answer.body);
}

const startOf = ({ runs }: WhatIfAnswer['plan'], key: string): string =>
  runs[0]?.stages.find((stage) => stage.key === key)?.startAt ?? '';

describe('what if, over HTTP', () => {
  it('shows the plan with a remedy, which has the odds that the remedy tells', async () => {
    const plans = await bench.count('plan_revision');
    const { remedies } = (await bench.call('GET', `/api/runs/${run.run.id}/remedies`)).body;
    expect(remedies.length).toBeGreaterThan(0);
    for (const { change, effects } of remedies) {
      const { plan } = await tried({ change });
      expect(plan.odds?.soundByTheDay).toBeCloseTo(effects.odds.after, 10);
    }
    expect(await bench.count('plan_revision')).toBe(plans);
  });

  it('shows the plan with a stage put elsewhere, and the same once that is asked for', async () => {
    const pins = [{ stage: 'unmould', startAt: '2026-11-29T16:00:00.000Z' }];
    const { plan, changes } = await tried({ pins });
    expect(startOf(plan, 'unmould')).toBe('2026-11-29T16:00:00.000Z');
    expect(changes).toContainEqual(expect.objectContaining({ stage: 'unmould', change: 'later' }));
    expect((await bench.call('POST', `/api/runs/${run.run.id}/plan`, { pins })).status).toBe(201);
    const latest = (await bench.call('GET', `/api/runs/${run.run.id}/plan`)).body as PlanView;
    expect(latest.document.runs).toEqual(plan.runs);
    expect(latest.document.odds).toEqual(plan.odds);
  });

  it('says why a stage cannot be there, with the stages where they were', async () => {
    const pins = [{ stage: 'unmould', startAt: '2026-11-30T03:00:00.000Z' }];
    const { plan, changes } = await tried({ pins });
    expect(plan.status).toBe('conflict');
    expect(plan.conflict.map(({ text }) => text).join(' ')).toContain('Unmould');
    expect(changes).toEqual([]);
  });

  it('shows what making a batch again would do, before it is logged', async () => {
    const at = '2026-11-27T17:00:00.000Z';
    const entry = (response: 'remake' | 'drop-part') =>
      ({ kind: 'mishap', part: 'foam', mishap: 'seized', response, at }) as const;
    const [again, without] = [
      await tried({ entries: [entry('remake')] }),
      await tried({ entries: [entry('drop-part')] }),
    ];
    expect(again.plan.runs[0]?.stages.find(({ key }) => key === 'pipe-foam')).toBeDefined();
    expect(without.plan.runs[0]?.stages.find(({ key }) => key === 'pipe-foam')).toBeUndefined();
    expect(without.changes).toContainEqual(
      expect.objectContaining({ stage: 'pipe-foam', change: 'removed' }),
    );
  });

  it.each([
    ['nothing', {}, 'change'],
    [
      'both',
      {
        change: { kind: 'plan-anew' },
        entries: [{ kind: 'done', stage: 'turn', at: '2026-11-27T17:00:00Z' }],
      },
      'change',
    ],
    [
      'an entry that cannot be true',
      { entries: [{ kind: 'done', stage: 'turn', at: '2026-11-27T17:00:00Z' }] },
      'entries[0].stage',
    ],
  ])('refuses %s, and says where', async (_what, wish, path) => {
    const answer = await bench.call('POST', `/api/runs/${run.run.id}/what-if`, wish);
    expect(answer.status).toBe(422);
    expect(answer.body.issues[0].path).toBe(path);
  });

  it('is not for a run that was given up', async () => {
    const order = { ...file.runs[0], key: 'given-up' };
    const made = (await bench.call('POST', '/api/runs', order)).body as CreatedRun;
    await bench.call('DELETE', `/api/runs/${made.run.id}`);
    const wish = { change: { kind: 'plan-anew' } };
    expect((await bench.call('POST', `/api/runs/${made.run.id}/what-if`, wish)).status).toBe(409);
  });
});
