import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createdRun, logAnswer, planRevision, tideTable } from '#contract';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

let bench: TestApi;
let runId: string;
const [order] = loadRunFile('ok', 'two-layer').runs;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z');
  await bench.stock(loadRunFile('ok', 'two-layer'));
});
afterAll(() => bench.close());

const log = (entry: unknown, key?: string) =>
  bench.call('POST', `/api/runs/${runId}/log`, entry, key === undefined ? {} : { 'idempotency-key': key });

describe('the life of a run', () => {
  it('begins with a plan made at once', async () => {
    const answer = await bench.call('POST', '/api/runs', order);
    expect(answer.status).toBe(201);
    const { run, plan } = createdRun.parse(answer.body);
    expect(plan).toMatchObject({
      number: 1,
      status: 'planned',
      cause: { code: 'cause.first-plan' },
      changes: [],
    });
    expect(plan.document.runs[0]?.stages).toHaveLength(4);
    runId = run.id;
  });

  it('shows tide table, odds, amounts and nudges', async () => {
    const table = tideTable.parse((await bench.call('GET', `/api/runs/${runId}/tide-table`)).body);
    expect(table.stages.map((s) => s.key)).toEqual(['pour-under', 'pour-over', 'unmould', 'turn']);
    const { body } = await bench.call('GET', `/api/runs/${runId}/odds`);
    expect(body.odds.soundByTheDay).toBeGreaterThan(0.5);
    expect(body.odds.standardError).toBeLessThan(0.02);
    const nudges = (await bench.call('GET', '/api/nudges?status=waiting')).body;
    expect(nudges.filter((n: { kind: string }) => n.kind === 'time-for-it')).toHaveLength(4);
  });

  it('refuses what has not happened yet or cannot have happened, and stores nothing', async () => {
    const future = await log({ kind: 'done', stage: 'pour-under', at: '2026-11-27T18:30:00Z' });
    expect(future).toMatchObject({
      status: 422,
      body: { issues: [{ code: 'log.in-the-future', path: 'at' }] },
    });
    bench.clock.advance(100);
    const unknown = await log({ kind: 'done', stage: 'fly', at: '2026-11-27T18:30:00Z' });
    expect(unknown).toMatchObject({ status: 422, body: { issues: [{ path: 'stage', value: 'fly' }] } });
    expect(await bench.count('bench_log')).toBe(0);
  });

  it('keeps what is done and plans the rest', async () => {
    const answer = await log({ kind: 'done', stage: 'pour-under', at: '2026-11-27T18:34:00Z' });
    expect(answer.status).toBe(201);
    const { plan, why } = logAnswer.parse(answer.body);
    expect(plan).toMatchObject({
      number: 2,
      cause: { code: 'cause.logged', text: 'Logged: “Pour the lower layer” is done.' },
    });
    expect(why[0]).toMatchObject({ code: 'logged.done', text: '“Pour the lower layer” is done.' });
    expect((await bench.call('GET', `/api/runs/${runId}`)).body.state).toBe('making');
  });

  it('makes a seized batch again: finished stages stay, old nudges go, and the answer says why', async () => {
    const before = (await bench.call('GET', `/api/runs/${runId}/plan`)).body;
    bench.clock.advance(80);
    const seized = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T19:55:00Z' };
    const { plan, why } = logAnswer.parse((await log(seized)).body);
    expect(why.map(({ code }) => code)).toEqual(['logged.mishap', 'effect.moves']);
    expect(why[0]).toMatchObject({ mishap: 'seized', response: 'remake', part: { title: 'Upper layer' } });
    expect(plan.changes.map((c) => [c.stage, c.attempt, c.change])).toContainEqual(['pour-over', 2, 'added']);
    const stages = plan.document.runs[0]?.stages ?? [];
    const done = (list: typeof stages) => list.filter((s) => s.status === 'done');
    expect(done(stages)).toEqual(done(before.document.runs[0].stages));
    expect(stages.find((s) => s.key === 'pour-over' && s.attempt === 1)?.status).toBe('spoilt');
    const waiting: { stage: string; attempt: number }[] = (
      await bench.call('GET', '/api/nudges?status=waiting')
    ).body;
    expect(waiting.some((n) => n.stage === 'pour-over' && n.attempt === 1)).toBe(false);
    expect(waiting.some((n) => n.stage === 'pour-over' && n.attempt === 2)).toBe(true);
  });

  it('keeps every plan as it was', async () => {
    const heads = (await bench.call('GET', `/api/runs/${runId}/plans`)).body;
    expect(heads.map((h: { number: number }) => h.number)).toEqual([3, 2, 1]);
    const first = planRevision.parse((await bench.call('GET', `/api/runs/${runId}/plans/1`)).body);
    expect(first.document.runs[0]?.stages.every((s) => s.status === 'planned')).toBe(true);
    expect((await bench.call('GET', `/api/runs/${runId}/plans/9`)).status).toBe(404);
  });

  it('moves the window on “not firm yet”', async () => {
    await log({ kind: 'done', stage: 'pour-over', at: '2026-11-27T20:00:00Z' });
    await bench.walkTo('2026-11-29T18:00:00Z');
    const before = (await bench.call('GET', `/api/runs/${runId}/tide-table`)).body;
    const { plan } = (await log({ kind: 'not-yet', stage: 'unmould', at: '2026-11-29T18:00:00Z' })).body;
    const opens = (stages: { key: string; opensAt: string }[]) =>
      stages.find((s) => s.key === 'unmould')?.opensAt;
    expect(Date.parse(opens(plan.document.runs[0].stages) ?? '')).toBeGreaterThan(
      Math.max(Date.parse(opens(before.stages) ?? ''), Date.parse('2026-11-29T18:00:00Z')),
    );
  });

  it('ends with a lot that says when it is cured', async () => {
    await bench.walkTo('2026-12-01T20:00:00Z', 240);
    await log({ kind: 'done', stage: 'unmould', at: '2026-12-01T18:20:00Z' });
    await bench.walkTo('2026-12-04T20:00:00Z', 240);
    expect((await bench.call('GET', '/api/lots')).body).toEqual([]);
    const { why } = (await log({ kind: 'done', stage: 'turn', at: '2026-12-04T19:00:00Z' })).body;
    expect(why.map(({ code }: { code: string }) => code)).toContain('effect.nothing-left');
    const lots = (await bench.call('GET', '/api/lots')).body;
    expect(lots).toMatchObject([
      { runId, title: 'Twelve cups', count: 12, madeAt: '2026-12-04T19:00:00.000Z' },
    ]);
    const [{ ready }] = lots;
    expect(ready.low < ready.likely && ready.likely < ready.high).toBe(true);
    expect(ready.low > '2026-12-15').toBe(true);
    expect((await bench.call('GET', `/api/runs/${runId}`)).body.state).toBe('curing');
  });
});

describe('several runs', () => {
  it('are planned around each other: one set of hands, one set of cavities', async () => {
    const later = (key: string) => ({ ...order, key, startAfter: '2026-12-11T18:00' });
    const first = createdRun.parse((await bench.call('POST', '/api/runs', later('second'))).body);
    const second = createdRun.parse((await bench.call('POST', '/api/runs', later('third'))).body);
    const start = (made: typeof first, stage: string) =>
      made.plan.document.runs[0]?.stages.find((s) => s.key === stage);
    expect(second.plan.status).toBe('planned');
    expect((start(second, 'pour-under')?.startAt ?? '') >= (start(first, 'unmould')?.endAt ?? 'z')).toBe(
      true,
    );
  });

  it('can be given up: no nudge is left, and nothing can be logged', async () => {
    const runs: { id: string; key: string }[] = (await bench.call('GET', '/api/runs')).body;
    const id = runs.find((r) => r.key === 'second')?.id ?? '';
    expect((await bench.call('DELETE', `/api/runs/${id}`)).status).toBe(204);
    expect((await bench.call('GET', `/api/nudges?status=waiting&run=${id}`)).body).toEqual([]);
    const entry = { kind: 'done', stage: 'pour-under', at: '2026-12-01T18:00:00Z' };
    expect((await bench.call('POST', `/api/runs/${id}/log`, entry)).status).toBe(409);
  });

  it('leave their hands and moulds to others once they are given up', async () => {
    const runs: { id: string; key: string }[] = (await bench.call('GET', '/api/runs')).body;
    const [second, third] = ['second', 'third'].map((key) => runs.find((each) => each.key === key)?.id ?? '');
    const before = (await bench.call('GET', `/api/runs/${second ?? ''}/plan`)).body;
    expect((await bench.call('DELETE', `/api/runs/${third ?? ''}`)).status).toBe(204);
    const again = { ...order, key: 'fourth', startAfter: '2026-12-11T18:00' };
    const { run, plan } = createdRun.parse((await bench.call('POST', '/api/runs', again)).body);
    const pour = (stages: { key: string; startAt: string }[] = []) =>
      stages.find(({ key }) => key === 'pour-under')?.startAt;
    expect(pour(plan.document.runs[0]?.stages)).toBe(pour(before.document.runs[0].stages));
    await bench.call('DELETE', `/api/runs/${run.id}`);
  });

  it('are listed by state and a page at a time, the latest first, each page oldest first', async () => {
    const list = async (query: string): Promise<string[]> =>
      (await bench.call('GET', `/api/runs${query}`)).body.map((run: { id: string }) => run.id);
    const all: { id: string; key: string; state: string }[] = (await bench.call('GET', '/api/runs')).body;
    expect(all.slice(1).map(({ key, state }) => `${key} ${state}`)).toEqual([
      ...['second abandoned', 'third abandoned', 'fourth abandoned'],
    ]);
    const ids = all.map(({ id }) => id);
    const planned = createdRun.parse(
      (await bench.call('POST', '/api/runs', { ...order, key: 'fifth', startAfter: '2027-01-15T18:00' }))
        .body,
    ).run.id;
    expect(await list('?state=live')).toEqual([planned]);
    expect(await list('?state=over')).toEqual(ids);
    expect(await list('?most=2')).toEqual([ids[3], planned]);
    expect(await list(`?most=2&before=${ids[3] ?? ''}`)).toEqual([ids[1], ids[2]]);
    expect(await list(`?most=2&state=over&before=${planned}`)).toEqual([ids[2], ids[3]]);
    expect(await list(`?before=${ids[0] ?? ''}`)).toEqual([]);
    for (const query of ['?most=0', '?most=201', '?most=x', '?state=ready', '?before=1', '?after=1'])
      expect((await bench.call('GET', `/api/runs${query}`)).status).toBe(422);
    expect((await bench.call('DELETE', `/api/runs/${planned}`)).status).toBe(204);
  });

  it('answers with a conflict where there is no plan, and keeps it', async () => {
    const { status, body } = await bench.call('POST', '/api/runs', { ...order, key: 'many', count: 500 });
    expect(status).toBe(201);
    expect(body.plan).toMatchObject({ status: 'conflict' });
    expect(body.plan.document.conflict[0]).toMatchObject({
      needed: 500,
      owned: 12,
      resource: { key: 'cup' },
    });
    expect(body.plan.document.conflict[0].text).toContain('needs 500 cavities');
  });

  it('plans a whole file without keeping anything', async () => {
    const before = await bench.count('run');
    const { status, body } = await bench.call('POST', '/api/plan-preview', loadRunFile('ok', 'two-layer'));
    expect([status, body.schema]).toEqual([200, 'benchtide.plan/4']);
    expect(await bench.count('run')).toBe(before);
  });
});
