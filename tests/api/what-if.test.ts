import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { whatIfAnswer, type CreatedRun, type PlanView, type WhatIf, type WhatIfAnswer } from '#contract';
import { openBench, type Bench } from '../support/api-bench.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('demo', 'rockpool-tiles');
let bench: Bench;
let run: CreatedRun;

beforeAll(async () => {
  bench = await openBench('2026-11-27T17:00:00Z', file);
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
      expect(plan.odds?.probability).toBeCloseTo(effects.odds.after, 10);
    }
    expect(await bench.count('plan_revision')).toBe(plans);
  });

  it('shows where a stage goes that is put off, and the same once it is logged', async () => {
    const entry = {
      kind: 'put-off' as const,
      stage: 'unmould',
      until: '2026-11-29T16:00:00.000Z',
      at: '2026-11-27T17:00:00.000Z',
    };
    const { plan, changes } = await tried({ entries: [entry] });
    expect(startOf(plan, 'unmould') >= entry.until).toBe(true);
    expect(changes).toContainEqual(expect.objectContaining({ stage: 'unmould', change: 'later' }));
    expect((await bench.call('POST', `/api/runs/${run.run.id}/log`, entry)).status).toBe(201);
    const latest = (await bench.call('GET', `/api/runs/${run.run.id}/plan`)).body as PlanView;
    expect(latest.cause).toBe('log: unmould put off');
    expect(latest.document.runs).toEqual(plan.runs);
    expect(latest.document.odds).toEqual(plan.odds);
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
