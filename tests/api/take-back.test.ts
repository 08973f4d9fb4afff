import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CreatedRun, LogAnswer, LogEntry, PlanView } from '#contract';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
let bench: TestApi;
let id: string;
let before: Record<string, string>;

/** The run with both layers poured: it is to be unmoulded on Sunday. */
beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  const [order] = await bench.stock(file);
  const created = await bench.call('POST', '/api/runs', { ...order, readyBy: undefined });
  id = (created.body as CreatedRun).run.id;
  await log({ kind: 'done', stage: 'pour-deep', at: '2026-11-27T18:40:00Z' });
  await log({ kind: 'done', stage: 'pour-sand', at: '2026-11-27T20:00:00Z' });
  before = open((await log({ kind: 'done', stage: 'press-shells', at: '2026-11-27T20:40:00Z' })).plan);
});
afterAll(() => bench.close());

/** Logs an entry at the instant at which it happened. */
async function log(entry: LogEntry): Promise<LogAnswer> {
  bench.clock.advance((Date.parse(entry.at) - bench.clock.now().getTime()) / 60_000);
  const answer = await bench.call('POST', `/api/runs/${id}/log`, entry);
  expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  return answer.body as LogAnswer;
}

const takeBack = ({ entry }: LogAnswer, at: string): Promise<LogAnswer> =>
  log({ kind: 'take-back', entry: entry.id, at });

const open = ({ document }: Pick<PlanView, 'document'>): Record<string, string> =>
  Object.fromEntries(
    (document.runs[0]?.stages ?? [])
      .filter((stage) => stage.status === 'planned')
      .map(({ key, startAt }) => [key, startAt]),
  );

describe('taking an entry back', () => {
  it('brings the plan back that was before it', async () => {
    const slip = await log({ kind: 'not-yet', stage: 'unmould', at: '2026-11-29T09:00:00Z' });
    expect(open(slip.plan)).not.toEqual(before);
    expect(open((await takeBack(slip, '2026-11-29T09:01:00Z')).plan)).toEqual(before);
  });

  it('a few minutes into a stage moves nothing by more than those minutes', async () => {
    const into = (minutes: number): string =>
      new Date(Date.parse(before['unmould'] ?? '') + minutes * 60_000).toISOString();
    const slip = await log({ kind: 'not-yet', stage: 'unmould', at: into(6) });
    const after = open((await takeBack(slip, into(8))).plan);
    const moved = Object.entries(before).map(
      ([stage, at]) => (Date.parse(after[stage] ?? '') - Date.parse(at)) / 60_000,
    );
    expect(Math.max(...moved)).toBe(8);
    expect(Math.min(...moved)).toBeGreaterThanOrEqual(0);
  });
});

it('asks back where a stage was done long before the soap can have been ready, and takes it once it is confirmed', async () => {
  const runs = await bench.call('GET', '/api/runs');
  const begun = await bench.call('POST', '/api/runs', {
    ...runs.body[0].order,
    key: 'early',
    title: 'Early',
    readyBy: undefined,
  });
  const early = (begun.body as CreatedRun).run.id;
  const tell = (entry: object) => bench.call('POST', `/api/runs/${early}/log`, entry);
  for (const [stage, at] of [
    ['pour-deep', '2026-11-29T10:00:00Z'],
    ['pour-sand', '2026-11-29T12:00:00Z'],
    ['press-shells', '2026-11-29T12:40:00Z'],
  ]) {
    bench.clock.advance((Date.parse(at!) - bench.clock.now().getTime()) / 60_000);
    expect((await tell({ kind: 'done', stage, at })).status).toBe(201);
  }
  bench.clock.advance(60);
  const slip = { kind: 'done', stage: 'unmould', at: '2026-11-29T13:30:00Z' };
  const asked = await tell(slip);
  expect(asked.status).toBe(422);
  expect(asked.body.issues).toMatchObject([{ code: 'log.time-doubtful', path: 'at' }]);
  expect(asked.body.issues[0].message).toMatch(/“firm enough to unmould” after 78 min\? .* was expected\./);
  expect((await tell({ ...slip, confirmed: true })).status).toBe(201);
});
