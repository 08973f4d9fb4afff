import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nothingLearned } from '#runs';
import { ensureOwnWorkshop } from '../../apps/api/start/own-workshop.js';
import { testDatabase } from '../support/database.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type Answer, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'two-layer');
let bench: TestApi;
let demo: string;

const own = (method: string, path: string, body?: unknown): Promise<Answer> => bench.call(method, path, body);
const inDemo = (method: string, path: string, body?: unknown): Promise<Answer> =>
  bench.call(method, path, body, { 'benchtide-workshop': demo });

/** What the forecasts of a workshop's runs say made them. */
async function rulesOf(call: typeof own): Promise<Set<string>> {
  const rules = new Set<string>();
  for (const { id } of (await call('GET', '/api/runs')).body) {
    const { body, status } = await call('GET', `/api/runs/${id}/plan`);
    if (status !== 200) continue;
    for (const { clocks } of body.document.runs)
      for (const { reasons } of clocks) for (const { rule } of reasons) rules.add(rule);
  }
  return rules;
}

beforeAll(async () => {
  bench = await openTestApi('2026-11-25T09:00:00Z', file);
  const answer = await own('POST', '/api/demo');
  expect(answer.status).toBe(201);
  demo = answer.body.id;
});
afterAll(() => bench.close());

describe('the demo', () => {
  it('is there once, and says what it is', async () => {
    expect((await own('POST', '/api/demo')).body.id).toBe(demo);
    expect(await bench.count('workshop')).toBe(2);
    expect((await own('GET', '/api/session')).body).toMatchObject({
      workshop: { id: bench.workshopId, isDemo: false, begun: true },
      demo,
    });
    expect((await inDemo('GET', '/api/session')).body).toMatchObject({
      workshop: { id: demo, isDemo: true },
      demo,
    });
  });

  it.each(['runs', 'recipes', 'moulds', 'designs', 'nudges'])(
    'has %s that the own workshop never shows',
    async (of) => {
      expect((await inDemo('GET', `/api/${of}`)).body.length).toBeGreaterThan(1);
      expect((await own('GET', `/api/${of}`)).body).toEqual([]);
    },
  );

  it('teaches the own workshop nothing, however much was logged in it', async () => {
    expect((await inDemo('GET', '/api/lessons')).body.lessons.length).toBeGreaterThan(0);
    expect((await own('GET', '/api/lessons')).body.lessons).toEqual([]);
    expect((await own('GET', '/api/plan-input')).body.learned).toEqual(nothingLearned);
    for (const order of await bench.stock(file)) {
      expect((await own('POST', '/api/runs', order)).status).toBe(201);
    }
    expect(await rulesOf(inDemo)).toContain('lesson');
    const rules = await rulesOf(own);
    expect(rules.size).toBeGreaterThan(0);
    expect(rules).not.toContain('lesson');
  });

  it('keeps what is changed in it to itself, its stock and hours too', async () => {
    const mould = { ...file.moulds[0], key: 'tried-out', title: 'Tried out' };
    const read = async (): Promise<unknown[]> =>
      Promise.all(['workshop', 'moulds', 'stock'].map(async (of) => (await own('GET', `/api/${of}`)).body));
    const before = await read();
    const leftover = { kind: 'leftover-kept', title: 'Rest', form: 'dough', massG: 80 };
    const at = bench.clock.now().toISOString();
    const kept = { id: crypto.randomUUID(), entry: { ...leftover, madeAt: at, at } };
    expect((await inDemo('POST', '/api/stock/entries', kept)).status).toBe(201);
    expect((await inDemo('POST', '/api/moulds', mould)).status).toBe(201);
    const { facts, version } = (await inDemo('GET', '/api/workshop')).body;
    const changed = { version, facts: { ...facts, title: 'Changed', materials: [] } };
    expect((await inDemo('PUT', '/api/workshop', changed)).status).toBe(200);
    expect(await read()).toEqual(before);
  });

  it('lets in and shows the devices of the own workshop', async () => {
    const { code } = (await inDemo('POST', '/api/session/codes')).body;
    const made = await own('POST', '/api/session', { code });
    expect(made.body.workshop.id).toBe(bench.workshopId);
    expect((await inDemo('GET', '/api/keys')).body).toEqual((await own('GET', '/api/keys')).body);
  });

  it('is told of by the stream of events, which names it in its address', async () => {
    const call = (of: string): Promise<Response> =>
      fetch(`${bench.url}/api/inbox/stream?workshop=${of}`, {
        headers: { authorization: `Bearer ${bench.key}` },
      });
    const stream = await call(demo);
    expect(stream.status).toBe(200);
    await stream.body?.cancel();
    expect((await call(crypto.randomUUID())).status).toBe(410);
  });

  it('is open to nobody else', async () => {
    const other = await bench.storage.workshops.create(file.workshop);
    const { raw } = await bench.storage.keys.create(other.id, 'other');
    for (const of of [demo, bench.workshopId]) {
      const answer = await bench.call('GET', '/api/runs', undefined, {
        authorization: `Bearer ${raw}`,
        'benchtide-workshop': of,
      });
      expect([answer.status, answer.body.type]).toEqual([410, 'urn:benchtide:problem:demo-gone']);
    }
  });

  it('is thrown away with all that is in it, and nothing else is', async () => {
    const runs = (await own('GET', '/api/runs')).body;
    const stage = (await own('GET', `/api/runs/${runs[0].id}/plan`)).body.document.runs[0].stages[0].key;
    const entry = { kind: 'done', stage, at: bench.clock.now().toISOString(), confirmed: true };
    const logged = await own('POST', `/api/runs/${runs[0].id}/log`, entry);
    expect(logged.status, JSON.stringify(logged.body)).toBe(201);
    const log = (await own('GET', `/api/runs/${runs[0].id}/log`)).body;
    expect((await own('DELETE', '/api/demo')).status).toBe(204);
    expect((await inDemo('GET', '/api/runs')).status).toBe(410);
    expect((await inDemo('POST', '/api/moulds', file.moulds[0])).status).toBe(410);
    expect((await own('GET', '/api/session')).body.demo).toBeNull();
    expect((await own('GET', `/api/runs/${runs[0].id}/log`)).body).toEqual(log);
    expect((await own('GET', '/api/runs')).body.length).toBe(runs.length);
    expect(await bench.storage.workshops.get(demo)).toBeNull();
    // Once more is no mistake, and a new one can be made.
    expect((await own('DELETE', '/api/demo')).status).toBe(204);
    expect((await own('POST', '/api/demo')).body.id).not.toBe(demo);
  });
});

it('leaves a new program with an empty workshop that its maker has not begun with, until it is changed', async () => {
  const database = await testDatabase();
  try {
    const storage = await database.open();
    const made = await ensureOwnWorkshop(storage);
    expect(made).toMatchObject({ begun: false, demoOf: null });
    await storage.workshops.create(file.workshop, { demoOf: made.id });
    expect((await ensureOwnWorkshop(storage)).id).toBe(made.id);
    const changed = await storage.workshops.update(made.id, made.version, file.workshop);
    expect(changed).toMatchObject({ ok: true, value: { begun: true } });
  } finally {
    await database.drop();
  }
});
