import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CreatedRun, LogAnswer, LogEntry, LoggedView, PlanView } from '#contract';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'plain-tiles');
const at = '2026-11-27T18:40:00Z';
let bench: TestApi;
let id: string;
let done: LogAnswer;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T19:00:00Z', file);
  const [order] = await bench.stock(file);
  id = ((await bench.call('POST', '/api/runs', { ...order, readyBy: undefined })).body as CreatedRun).run.id;
  done = (await write({ kind: 'done', stage: 'pour-deep', at })).body as LogAnswer;
});
afterAll(() => bench.close());

const write = (entry: object) => bench.call('POST', `/api/runs/${id}/log`, entry);
const latest = async (): Promise<PlanView> => (await bench.call('GET', `/api/runs/${id}/plan`)).body;
const logged = async (): Promise<LogEntry[]> =>
  ((await bench.call('GET', `/api/runs/${id}/log`)).body as LoggedView[]).map(({ entry }) => entry);

describe('a note', () => {
  it('stands in the log at its stage or entry, and makes no plan', async () => {
    const before = await latest();
    // The plan would be another by now.
    bench.clock.advance(180);
    const note = { kind: 'note', stage: 'pour-sand', note: 'Swirled twice.\nPretty.', at };
    const answer = await write(note);
    expect(answer.status).toBe(201);
    expect(answer.body.why.map(({ code }: { code: string }) => code)).toEqual([
      'logged.note',
      'effect.nothing-moves',
    ]);
    const about = { kind: 'note', about: done.entry.id, note: 'A little thick', at };
    const second = await write(about);
    expect(second.status).toBe(201);
    expect(await latest()).toEqual(before);
    expect(second.body.plan).toEqual(before);
    expect(await logged()).toEqual(expect.arrayContaining([note, about]));
  });

  it('is corrected once by a later one, and taken back without another plan', async () => {
    const first = (await write({ kind: 'note', note: 'Sead foam', at })).body as LogAnswer;
    const corrects = first.entry.id;
    const second = await write({ kind: 'note', corrects, note: 'Sea foam', at });
    expect(second.status).toBe(201);
    const again = await write({ kind: 'note', corrects, note: 'See foam', at });
    expect(again.status).toBe(422);
    expect(again.body.issues).toMatchObject([{ code: 'log.unknown-entry', path: 'corrects' }]);
    const before = await latest();
    const back = await write({ kind: 'take-back', entry: second.body.entry.id, at });
    expect(back.status).toBe(201);
    expect(await latest()).toEqual(before);
  });

  it('corrects no entry but a note', async () => {
    const answer = await write({ kind: 'note', corrects: done.entry.id, note: 'Not poured', at });
    expect(answer.body.issues).toMatchObject([{ code: 'log.unknown-entry', path: 'corrects' }]);
  });

  it.each([
    ['without text', { note: ' \n ' }, 'note', 'Write something into the note, or add a photo.'],
    ['with more than 2000 characters', { note: 'x'.repeat(2001) }, 'note', /2,000/],
    ['at no stage of the run', { note: 'x', stage: 'nowhere' }, 'stage', /nowhere/],
    ['about no entry of the run', { note: 'x', about: 'nothing' }, 'about', /not in the log/],
  ])('%s is refused, and nothing is written', async (_, fields, path, message) => {
    const before = await bench.count('bench_log');
    const { status, body } = await write({ kind: 'note', at, ...fields });
    expect([status, body.issues.map((issue: { path: string }) => issue.path)]).toEqual([422, [path]]);
    expect(body.issues[0].message).toMatch(message);
    expect(await bench.count('bench_log')).toBe(before);
  });

  it('is kept when it is sent twice with one key, once', async () => {
    const before = await bench.count('bench_log');
    const send = () =>
      bench.call(
        'POST',
        `/api/runs/${id}/log`,
        { kind: 'note', note: 'Twice', at },
        { 'idempotency-key': 'one-note-once' },
      );
    const [one, two] = [await send(), await send()];
    expect(two.body).toEqual(one.body);
    expect(await bench.count('bench_log')).toBe(before + 1);
  });

  it('can still be written of a run that was cancelled', async () => {
    const run = (await bench.call('GET', `/api/runs/${id}`)).body;
    const given = await bench.call('DELETE', `/api/runs/${id}`, { version: run.version });
    expect(given.status, JSON.stringify(given.body)).toBeLessThan(300);
    expect((await write({ kind: 'note', note: 'The cat got at it', at })).status).toBe(201);
  });
});
