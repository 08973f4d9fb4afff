import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Compute } from '../../apps/api/compute/compute.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'two-layer');
const [order] = file.runs;
let bench: TestApi;
let run: string;
/** Runs that were made, so that each has a key of its own. */
let made = 0;
/** Plans that were worked out, and what happens beside each. */
let replans = 0;
let beside: () => Promise<void>;

const watched = (compute: Compute): Compute => ({
  ...compute,
  run: async (name, input, asker) => {
    const answer = await compute.run(name, input, asker);
    if (name === 'replan') {
      replans += 1;
      await beside();
    }
    return answer;
  },
});

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T19:00:00Z', file, undefined, { around: watched });
  beside = async () => undefined;
  await bench.stock(file);
});
beforeEach(async () => {
  beside = async () => undefined;
  made += 1;
  const created = await bench.call('POST', '/api/runs', { ...order, key: `run-${String(made)}` });
  expect(created.status, JSON.stringify(created.body)).toBe(201);
  run = created.body.run.id as string;
  replans = 0;
});
afterEach(() => bench.call('DELETE', `/api/runs/${run}`));
afterAll(() => bench.close());

const replan = (call = bench.call, headers = {}) => call('POST', `/api/runs/${run}/plan`, {}, headers);
const log = (entry: object, call = bench.call, headers = {}) =>
  call('POST', `/api/runs/${run}/log`, entry, headers);
const poured = { kind: 'done', stage: 'pour-under', at: '2026-11-27T17:10:00Z' };

async function editWorkshop(): Promise<void> {
  const { body } = await bench.call('GET', '/api/workshop');
  const { version, facts } = body;
  const answer = await bench.call('PUT', '/api/workshop', { version, facts });
  expect(answer.status, JSON.stringify(answer.body)).toBe(200);
}

describe('a plan', () => {
  it('is made again when what it was made from changed meanwhile', async () => {
    let edits = 0;
    beside = async () => {
      if (edits === 0) await editWorkshop();
      edits += 1;
    };
    expect((await replan()).status).toBe(201);
    expect(replans).toBe(2);
  });

  it('is made all the same when something changes each time, at last with the workshop held', async () => {
    beside = async () => {
      // Nothing can be edited while the workshop is held.
      if (replans <= 5) await editWorkshop();
    };
    const answer = await replan();
    expect(answer).toMatchObject({ status: 201, body: { number: 2 } });
    expect(replans).toBe(6);
  });

  it('does not hold up an edit of the workshop while it is worked out', async () => {
    let edited = false;
    beside = async () => {
      if (!edited) await editWorkshop();
      edited = true;
    };
    await log(poured);
    expect(edited).toBe(true);
  });

  it('is made once for each of twelve that ask at once', async () => {
    const answers = await Promise.all(Array.from({ length: 12 }, () => replan()));
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 201));
    const numbers = answers.map(({ body }) => body.number as number).sort((a, b) => a - b);
    expect(numbers).toEqual(Array.from({ length: 12 }, (_, i) => i + 2));
    expect(replans).toBe(12);
  });

  it('leaves nothing behind when the program breaks off before it is stored, and the same request makes it', async () => {
    beside = async () => {
      throw new Error('power cut');
    };
    const key = { 'idempotency-key': 'broken-off-1' };
    expect((await log(poured, bench.call, key)).status).toBe(500);
    expect((await bench.call('GET', `/api/runs/${run}/log`)).body).toEqual([]);
    beside = async () => undefined;
    const again = await log(poured, bench.call, key);
    expect(again).toMatchObject({ status: 201, body: { plan: { number: 2 } } });
    expect((await log(poured, bench.call, key)).body).toEqual(again.body);
    expect((await bench.call('GET', `/api/runs/${run}/log`)).body).toHaveLength(1);
  });
});

describe('two processes over one database', () => {
  let second: Awaited<ReturnType<TestApi['another']>>;
  beforeAll(async () => {
    second = await bench.another();
  });
  afterAll(() => second.close());

  it('bring what two devices log at once into one order, and plan both', async () => {
    await log(poured);
    // Each waits for the other once, so that both have planned from the same log before either stores.
    let arrived = 0;
    const gate: { open?: () => void } = {};
    const both = new Promise<void>((resolve) => {
      gate.open = resolve;
    });
    beside = async () => {
      arrived += 1;
      if (arrived === 2) gate.open?.();
      await both;
    };
    const looks = ['2026-11-27T18:01:00Z', '2026-11-27T18:02:00Z'].map((at) => ({
      ...{ kind: 'not-yet', stage: 'pour-over', at },
    }));
    const answers = await Promise.all([log(looks[0]!), log(looks[1]!, second.call)]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201]);
    const stored = (await bench.call('GET', `/api/runs/${run}/log`)).body as { id: string }[];
    expect(stored).toHaveLength(3);
    const plans = answers.map(({ body }) => body.plan.number as number);
    const order = answers.map(({ body }) => stored.findIndex(({ id }) => id === body.entry.id));
    // Who is later in the log has the later plan, which knows of both.
    expect(new Set(plans)).toEqual(new Set([3, 4]));
    expect(order[0]! < order[1]!).toBe(plans[0]! < plans[1]!);
  });

  it('carry a request out once that comes to both at once', async () => {
    let arrived = 0;
    const gate: { open?: () => void } = {};
    const both = new Promise<void>((resolve) => {
      gate.open = resolve;
    });
    beside = async () => {
      arrived += 1;
      if (arrived === 2) gate.open?.();
      await both;
    };
    const key = { 'idempotency-key': 'to-both-0001' };
    const answers = await Promise.all([replan(bench.call, key), replan(second.call, key)]);
    expect(answers[0]?.status).toBe(201);
    expect(answers[1]?.body).toEqual(answers[0]?.body);
    expect((await bench.call('GET', `/api/runs/${run}/plans`)).body).toHaveLength(2);
  });
});
