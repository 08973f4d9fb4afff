import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  clockRules,
  clocksDocument,
  lessonsDocument,
  type CreatedRun,
  type LogAnswer,
  type LoggedView,
} from '#contract';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
const [order] = file.runs;
let bench: TestApi;
let run: CreatedRun;

beforeAll(async () => {
  bench = await openTestApi('2026-11-30T12:00:00Z', file);
  await bench.stock(file);
  const created = await bench.call('POST', '/api/runs', order);
  expect(created.status).toBe(201);
  run = created.body as CreatedRun;
});
afterAll(() => bench.close());

const log = (entry: object): Promise<Answer> => bench.call('POST', `/api/runs/${run.run.id}/log`, entry);

async function firmOf(id: string) {
  const answer = await bench.call('GET', `/api/runs/${id}/clocks`);
  expect(answer.status, JSON.stringify(answer.body)).toBe(200);
  const document = clocksDocument.parse(answer.body);
  const clock = document.runs[0]?.parts
    .find(({ part }) => part === 'sand')
    ?.clocks.find(({ state }) => state === 'firm');
  if (clock === undefined) throw new Error('no clock');
  return clock;
}

describe('clocks over HTTP', () => {
  it('are those of the run, with rules and evidence to be had', async () => {
    const firm = await firmOf(run.run.id);
    expect(firm.reasons.length).toBeGreaterThan(1);
    const rules = clockRules.parse((await bench.call('GET', '/api/clock-rules')).body);
    const known = new Set(rules.rules.map(({ rule }) => rule));
    for (const { rule } of firm.reasons) expect(known).toContain(rule);
  });

  it('come from a run file as well, its earlier runs teaching', async () => {
    const answer = await bench.call('POST', '/api/clocks-preview', file);
    expect(answer.status, JSON.stringify(answer.body)).toBe(200);
    expect(clocksDocument.parse(answer.body).runs[0]?.lessons.length).toBeGreaterThan(2);
  });

  it('follow what is seen, teach the next run, and unlearn what is forgotten or taken back', async () => {
    const next = await bench.call('POST', '/api/runs', {
      ...order,
      key: 'next',
      startAfter: '2026-12-11T18:00',
      readyBy: undefined,
    });
    const nextId = (next.body as CreatedRun).run.id;
    const before = await firmOf(nextId);
    for (const entry of [
      {
        kind: 'done',
        stage: 'pour-deep',
        startedAt: '2026-11-27T18:00:00Z',
        at: '2026-11-27T18:40:00Z',
      },
      {
        kind: 'done',
        stage: 'pour-sand',
        startedAt: '2026-11-27T19:20:00Z',
        at: '2026-11-27T20:00:00Z',
      },
    ]) {
      expect((await log(entry)).status).toBe(201);
    }
    const seen = await log({
      kind: 'seen',
      part: 'sand',
      state: 'firm',
      saw: 'just-now',
      at: '2026-11-30T08:00:00Z',
    });
    expect(seen.status, JSON.stringify(seen.body)).toBe(201);
    const { now } = await firmOf(run.run.id);
    expect(now.likely / 60).toBeCloseTo(60, 0);
    const taught = await firmOf(nextId);
    expect(taught.band.likely).toBeGreaterThan(before.band.likely);

    const lessons = lessonsDocument.parse((await bench.call('GET', '/api/lessons')).body);
    const entryId = (seen.body as LogAnswer).entry.id;
    const set = lessons.lessons.find(({ pace, recipe }) => pace === 'set' && recipe === 'tile-base');
    expect(set?.observations[0]?.entries).toEqual([`harbour-market/${entryId}`]);
    // Untaught, workshop and recipe vary by hypot(0.35, 0.15) = 0.3808 in logarithms; the 90th percentile of the
    // standard normal is 1.2816 (from memory of its table), and exp(0.3808 · 1.2816) = 1.629.
    expect(set?.before).toMatchObject({ likely: 1 });
    expect(set?.before.high).toBeCloseTo(1.629, 3);
    expect((set?.before.low ?? 0) * (set?.before.high ?? 0)).toBeCloseTo(1, 9);
    expect((set?.factor.high ?? 9) / (set?.factor.low ?? 1)).toBeLessThan(1.629 ** 2);

    const forget = await log({ kind: 'forget', entry: entryId, at: '2026-11-30T09:00:00Z' });
    expect(forget.status, JSON.stringify(forget.body)).toBe(201);
    expect((await firmOf(nextId)).band).toEqual(before.band);
    const unforget = (forget.body as LogAnswer).entry.id;
    expect((await log({ kind: 'take-back', entry: unforget, at: '2026-11-30T09:01:00Z' })).status).toBe(201);
    expect((await firmOf(nextId)).band).toEqual(taught.band);
    const back = await log({ kind: 'take-back', entry: entryId, at: '2026-11-30T09:02:00Z' });
    expect(back.status).toBe(201);
    expect((await firmOf(nextId)).band).toEqual(before.band);
    expect((await firmOf(run.run.id)).now.likely).not.toBeCloseTo(60 * 60, 0);
  });

  it('keep every entry in the log, and refuse to take back what later ones need', async () => {
    const entries = (await bench.call('GET', `/api/runs/${run.run.id}/log`)).body as LoggedView[];
    expect(entries.map(({ entry }) => entry.kind)).toEqual([
      'done',
      'done',
      'seen',
      'forget',
      'take-back',
      'take-back',
    ]);
    const refused = await log({
      kind: 'take-back',
      entry: entries[0]?.id ?? '',
      at: '2026-11-30T10:00:00Z',
    });
    expect(refused.status).toBe(422);
    expect(refused.body).toMatchObject({ issues: [{ code: 'log.needed-later' }] });
    expect((await log({ kind: 'take-back', entry: 'nonsense', at: '2026-11-30T10:00:00Z' })).status).toBe(
      422,
    );
  });
});
