import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'two-layer');
const [order] = file.runs;
let bench: TestApi;

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T19:00:00Z');
  await bench.stock(file);
});
afterAll(() => bench.close());

const create = (key: string, body: unknown) =>
  bench.call('POST', '/api/runs', body, { 'idempotency-key': key });

it('answers a repeated creation the same way and creates nothing', async () => {
  const first = await create('phone-000001', order);
  const again = await create('phone-000001', order);
  expect([first.status, again.status]).toEqual([201, 201]);
  expect(again.body).toEqual(first.body);
  expect(await bench.count('run')).toBe(1);
});

it('refuses the key for another body, and a key that is none', async () => {
  const other = await create('phone-000001', { ...order, key: 'other' });
  expect(other).toMatchObject({
    status: 422,
    body: { type: 'urn:benchtide:problem:idempotency-key-reused' },
  });
  expect((await create('short', order)).status).toBe(400);
  expect(await bench.count('run')).toBe(1);
});

it('creates once when the same request comes ten times at once', async () => {
  const answers = await Promise.all(
    Array.from({ length: 10 }, () => create('phone-000002', { ...order, key: 'again' })),
  );
  expect(new Set(answers.map((a) => a.status))).toEqual(new Set([201]));
  expect(new Set(answers.map((a) => a.body.run.id)).size).toBe(1);
  expect(await bench.count('run')).toBe(2);
});

it('frees the key of a request that was refused', async () => {
  expect((await create('phone-000003', { ...order, key: 'third', design: 'teapot' })).status).toBe(422);
  expect((await create('phone-000003', { ...order, key: 'third' })).status).toBe(201);
});

it('takes twenty entries at once, each plan after the other', async () => {
  const [run] = (await bench.call('GET', '/api/runs')).body;
  for (const [stage, at] of [
    ['pour-under', '2026-11-27T17:10:00Z'],
    ['pour-over', '2026-11-27T17:55:00Z'],
  ]) {
    await bench.call('POST', `/api/runs/${run.id}/log`, { kind: 'done', stage, at });
  }
  const entries = Array.from({ length: 20 }, (_, i) => ({
    kind: 'not-yet',
    stage: 'unmould',
    at: `2026-11-27T18:${String(i).padStart(2, '0')}:00Z`,
  }));
  const answers = await Promise.all(
    entries.map((entry) => bench.call('POST', `/api/runs/${run.id}/log`, entry)),
  );
  expect(answers.map((a) => a.status)).toEqual(entries.map(() => 201));
  const numbers = answers.map((a) => a.body.plan.number as number).sort((a, b) => a - b);
  expect(numbers).toEqual(Array.from({ length: 20 }, (_, i) => i + 4));
  expect((await bench.call('GET', `/api/runs/${run.id}/log`)).body).toHaveLength(22);
});

describe('an answer that shows a plan', () => {
  const stored = (key: string) =>
    bench.sql(`SELECT response, revision_id FROM idempotency_key WHERE key = '${key}'`) as Promise<
      { response: object | null; revision_id: string | null }[]
    >;
  let run: string;
  beforeAll(async () => {
    run = (await create('phone-000010', { ...order, key: 'with-answers' })).body.run.id as string;
  });
  const kinds = [
    ['a plan that was asked for', 'plan', {}],
    ['a change', 'change', { change: { kind: 'count', run: 'with-answers', count: 9 } }],
    ['an entry', 'log', { kind: 'done', stage: 'pour-under', at: '2026-11-27T17:10:00Z' }],
  ] as const;

  it.each(kinds)(
    'of %s is the same again, of that time, and keeps no second copy of the plan',
    async (_, path, body) => {
      const key = `phone-for-${path}`;
      const ask = () => bench.call('POST', `/api/runs/${run}/${path}`, body, { 'idempotency-key': key });
      const first = await ask();
      expect(first.status, JSON.stringify(first.body)).toBe(201);
      await bench.call('POST', `/api/runs/${run}/plan`, {});
      const plans = (await bench.call('GET', `/api/runs/${run}/plans`)).body as unknown[];
      expect((await ask()).body).toEqual(first.body);
      expect((await bench.call('GET', `/api/runs/${run}/plans`)).body).toEqual(plans);
      const [kept] = await stored(key);
      expect(kept?.revision_id).not.toBeNull();
      expect(JSON.stringify(kept?.response)).not.toContain('"document"');
    },
  );

  it('is the same again where an earlier version kept it whole', async () => {
    const ask = () => bench.call('POST', `/api/runs/${run}/plan`, {}, { 'idempotency-key': 'phone-earlier' });
    const { body } = await ask();
    const whole = JSON.stringify({ ...body, cause: 'kept whole' });
    await bench.sql(
      `UPDATE idempotency_key SET revision_id = NULL, response = $$${whole}$$ WHERE key = 'phone-earlier'`,
    );
    expect((await ask()).body).toEqual({ ...body, cause: 'kept whole' });
  });

  it('of an entry to a run that was given up is the same again', async () => {
    const entry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T17:55:00Z' };
    const logged = await bench.call('POST', `/api/runs/${run}/log`, entry);
    await bench.call('DELETE', `/api/runs/${run}`);
    const slip = { kind: 'take-back', entry: logged.body.entry.id, at: '2026-11-27T18:50:00Z' };
    const ask = () => bench.call('POST', `/api/runs/${run}/log`, slip, { 'idempotency-key': 'phone-slip' });
    const first = await ask();
    expect(first.status, JSON.stringify(first.body)).toBe(201);
    expect((await ask()).body).toEqual(first.body);
    expect((await stored('phone-slip'))[0]?.response).toMatchObject({
      why: first.body.why.map(({ text: _said, ...each }: { text: string }) => each),
    });
  });
});
