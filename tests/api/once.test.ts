import { afterAll, beforeAll, expect, it } from 'vitest';
import { loadRunFile } from '../support/run-files.js';
import { openBench, type Bench } from '../support/api-bench.js';

const file = loadRunFile('ok', 'two-layer');
const [order] = file.runs;
let bench: Bench;

beforeAll(async () => {
  bench = await openBench('2026-11-27T19:00:00Z');
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
