import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RemedyChange } from '#contract';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');
let bench: TestApi;
let run: { readonly id: string; readonly key: string };

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
  await bench.stock(file);
  ({ run } = (await bench.call('POST', '/api/runs', file.runs[0])).body);
});
afterAll(() => bench.close());

const carry = (change: unknown): Promise<Answer> =>
  bench.call('POST', `/api/runs/${run.id}/change`, { change });

describe('a change that makes no sense', () => {
  const span = { from: '06:00', to: '07:00' };
  const cases: [what: string, change: unknown, issue: Record<string, unknown>][] = [
    [
      'a lye of 1000 %',
      { kind: 'recipe', recipe: 'tile-base', lyeConcentrationPercent: 1000 },
      { path: 'change.lyeConcentrationPercent', value: 1000, accepted: '1% to 100%' },
    ],
    [
      'a lye below 0',
      { kind: 'recipe', recipe: 'tile-base', lyeConcentrationPercent: -5 },
      { path: 'change.lyeConcentrationPercent', value: -5, accepted: '1% to 100%' },
    ],
    [
      'a lye that is one, but not for soap',
      { kind: 'recipe', recipe: 'tile-base', lyeConcentrationPercent: 60 },
      { path: 'change.lyeConcentrationPercent', value: 60, accepted: '20% to 50%' },
    ],
    [
      'lactate of 90 %',
      { kind: 'recipe', recipe: 'tile-base', sodiumLactatePercent: 90 },
      { path: 'change.sodiumLactatePercent', value: 90, accepted: '0% to 5%' },
    ],
    [
      'a thousand million pieces',
      { kind: 'count', run: 'RUN', count: 1_000_000_000 },
      { path: 'change.count', value: 1_000_000_000, accepted: 'at most 5,000' },
    ],
    [
      'fourteen spans in a day',
      { kind: 'hours', added: span, date: '2026-11-28', spans: Array.from({ length: 14 }, () => span) },
      { path: 'change.spans', accepted: 'at most 12 entries' },
    ],
    [
      'more cavities than there is silicone',
      { kind: 'cavities', mould: 'hexagon', cavities: 3.67e15 },
      { path: 'change.cavities', value: 3.67e15, accepted: 'at most 10,000' },
    ],
    [
      'a start in the year 1',
      { kind: 'start', run: 'RUN', startAfter: '0001-01-01T00:00' },
      { path: 'change.startAfter', value: '0001-01-01T00:00' },
    ],
    [
      'a last day in the year 9999',
      { kind: 'ready-by', run: 'RUN', readyBy: '9999-12-31' },
      { path: 'change.readyBy', value: '9999-12-31' },
    ],
    [
      'another run',
      { kind: 'count', run: 'somebody-else', count: 3 },
      { code: 'change.no-such-run', path: 'change.run', value: 'somebody-else' },
    ],
    [
      'a recipe that is not in the run',
      { kind: 'recipe', recipe: 'no-such', lyeConcentrationPercent: 33 },
      { code: 'change.no-such-recipe', path: 'change.recipe', value: 'no-such' },
    ],
    [
      'a mould that nobody has',
      { kind: 'cavities', mould: 'no-such', cavities: 3 },
      { code: 'change.no-such-mould', path: 'change.mould', value: 'no-such' },
    ],
  ];

  it.each(cases)('%s: neither tried nor carried out', async (_what, wanted, issue) => {
    const change = JSON.parse(JSON.stringify(wanted).replace('RUN', run.key)) as RemedyChange;
    const before = (await bench.call('GET', `/api/runs/${run.id}`)).body;
    const tried = await bench.call('POST', `/api/runs/${run.id}/what-if`, { change });
    for (const answer of [tried, await carry(change)]) {
      expect(answer.status).toBe(422);
      expect(answer.body.issues).toMatchObject([issue]);
    }
    expect((await bench.call('GET', `/api/runs/${run.id}`)).body).toEqual(before);
    expect((await bench.call('GET', `/api/runs/${run.id}/plans`)).body).toHaveLength(1);
  });

  it('hours of more days than a workshop keeps', async () => {
    const workshop = (await bench.call('GET', '/api/workshop')).body;
    const exceptions = Array.from({ length: 400 }, (_, i) => ({
      date: new Date(Date.UTC(2030, 0, 1 + i)).toISOString().slice(0, 10),
      spans: [],
    }));
    const facts = { ...workshop.facts, hours: { ...workshop.facts.hours, exceptions } };
    const full = await bench.call('PUT', '/api/workshop', { version: workshop.version, facts });
    expect(full.status).toBe(200);
    const answer = await carry({ kind: 'hours', added: span, date: '2026-11-29', spans: [span] });
    expect(answer.status).toBe(422);
    expect(answer.body.issues).toMatchObject([
      { path: 'change.hours.exceptions', accepted: 'at most 400 entries' },
    ]);
    expect((await bench.call('GET', '/api/workshop')).body).toEqual(full.body);
    const back = { version: full.body.version, facts: workshop.facts };
    expect((await bench.call('PUT', '/api/workshop', back)).status).toBe(200);
  });
});
