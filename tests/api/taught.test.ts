import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { learnedFrom, teachingsOf } from '#runs';
import type { Compute } from '../../apps/api/compute/compute.js';
import { ApiProblem } from '../../apps/api/problems/api-problem.js';
import type { TaskName } from '../../apps/api/compute/tasks.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

const file = loadRunFile('ok', 'two-layer');
const [order] = file.runs;
let bench: TestApi;
let first: string;
let second: string;
/** Of what all processes asked to be worked out, all but the odds of plans that stand, which are renewed beside it. */
let asked: TaskName[] = [];
/** What happens before a run's teachings are worked out. */
let before = async (): Promise<void> => undefined;
/** What happens while a plan is worked out. */
let beside = async (): Promise<void> => undefined;

const watched = (compute: Compute): Compute => ({
  ...compute,
  run: async (name, input, asker) => {
    if (name !== 'judge') asked.push(name);
    if (name === 'teach') await before();
    if (name === 'replan') await beside();
    return compute.run(name, input, asker);
  },
});

beforeAll(async () => {
  bench = await openTestApi('2026-11-27T19:00:00Z', file, undefined, { around: watched });
  await bench.stock(file);
  first = (await bench.call('POST', '/api/runs', { ...order, key: 'first' })).body.run.id;
  second = (await bench.call('POST', '/api/runs', { ...order, key: 'second' })).body.run.id;
  for (const entry of [
    { kind: 'done', stage: 'pour-under', at: '2026-11-27T10:10:00Z' },
    { kind: 'done', stage: 'pour-over', at: '2026-11-27T17:55:00Z' },
    {
      ...{ kind: 'not-yet', stage: 'unmould', at: '2026-11-27T18:30:00Z' },
      opened: '2026-11-27T10:00:00Z',
    },
  ]) {
    const answer = await bench.call('POST', `/api/runs/${first}/log`, entry);
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
  }
});
// Renewing odds works out what is missing too: it is to be over before a test takes anything away.
beforeEach(() => bench.renewed());
afterAll(() => bench.close());

/** What a run has to learn from, as its plans are given it. */
async function learned(run: string, call = bench.call): Promise<unknown> {
  const answer = await call('GET', `/api/runs/${run}/plan-input`);
  expect(answer.status, JSON.stringify(answer.body)).toBe(200);
  return answer.body.learned;
}

/** The same, from the log. */
async function fromLog(): Promise<unknown> {
  const { storage, workshopId } = bench;
  const run = await storage.runs.get(workshopId, first);
  const facts = (await storage.workshops.get(workshopId))?.facts;
  if (run === null || facts === undefined) throw new Error('nothing there');
  const log = await storage.log.list(workshopId, { runId: first });
  const { teachings } = teachingsOf({ order: run.order, ...run.snapshot, log }, facts);
  expect(teachings.observations.length).toBeGreaterThan(0);
  return learnedFrom([teachings]);
}

describe('what a run teaches', () => {
  it('is kept with each entry, and given to the plans of others but not to its own', async () => {
    asked = [];
    expect(await learned(second)).toEqual(await fromLog());
    expect(await learned(first)).toEqual({ paces: [], earliest: [], uses: [] });
    expect(asked).toEqual([]);
  });

  it('says from when on the plan asked for a stage, whatever whoever wrote the entry says of that', async () => {
    const { storage, workshopId } = bench;
    const log = await storage.log.list(workshopId, { runId: first });
    const looks = log.flatMap(({ entry }) => (entry.kind === 'not-yet' ? [entry] : []));
    expect(looks).toHaveLength(1);
    expect(Date.parse(looks[0]?.opened ?? '')).toBeGreaterThan(Date.parse('2026-11-28T00:00:00Z'));
  });

  it('is worked out anew once where nothing is kept of it, as after an update', async () => {
    const { storage, workshopId } = bench;
    const kept = await storage.teachings.list(workshopId, { butRun: null });
    await bench.sql('DELETE FROM run_teaching');
    const other = await bench.another();
    asked = [];
    const all = await Promise.all([learned(second, other.call), learned(second, other.call)]);
    expect(all).toEqual([await fromLog(), await fromLog()]);
    expect(asked).toEqual(['teach']);
    expect(await storage.teachings.list(workshopId, { butRun: null })).toEqual(kept);
    await other.close();
  });

  it('is worked out anew where it rests on other rules, and where the log has gone on without it', async () => {
    await bench.sql(
      `UPDATE run_teaching SET basis = 'other rules', teachings = '{"observations":[],"earliest":[],"weighings":[]}'`,
    );
    const other = await bench.another();
    expect(await learned(second, other.call)).toEqual(await fromLog());
    const look = { kind: 'not-yet', stage: 'unmould', at: '2026-11-27T18:50:00Z' } as const;
    await bench.storage.log.append(bench.workshopId, first, look);
    expect(await learned(second, other.call)).toEqual(await fromLog());
    await other.close();
  });

  it('is not overwritten by what was worked out before an entry was logged', async () => {
    await bench.sql('DELETE FROM run_teaching');
    const other = await bench.another();
    let late = true;
    before = async () => {
      if (!late) return;
      late = false;
      const look = { kind: 'not-yet', stage: 'unmould', at: '2026-11-27T18:55:00Z' };
      const answer = await bench.call('POST', `/api/runs/${first}/log`, look);
      expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    };
    expect(await learned(second, other.call)).toEqual(await fromLog());
    before = async () => undefined;
    await other.close();
  });

  it('is left to whoever needs it next where there is no time for it, and the entry is kept', async () => {
    const told = { says: 'task-took-too-long', task: 'teach', seconds: 20 } as const;
    before = () => Promise.reject(new ApiProblem(503, 'took-too-long', told));
    const look = { kind: 'not-yet', stage: 'unmould', at: '2026-11-27T18:57:00Z' };
    const answer = await bench.call('POST', `/api/runs/${first}/log`, look);
    expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    // Whoever renews the odds needs it too, and has no more time for it.
    await bench.renewed();
    before = async () => undefined;
    // Rows were deleted above, and versions count anew, so what this program had at hand by version is not asked for.
    const other = await bench.another();
    asked = [];
    expect(await learned(second, other.call)).toEqual(await fromLog());
    expect(asked).toEqual(['teach']);
    await other.close();
  });

  it('makes the plan of another run anew when it changes meanwhile, even of a run that was given up', async () => {
    const other = await bench.another();
    expect((await bench.call('DELETE', `/api/runs/${first}`)).status).toBe(204);
    const log = (await bench.call('GET', `/api/runs/${first}/log`)).body as {
      id: string;
      entry: { kind: string };
    }[];
    // The latest look: the earlier ones teach no more than it does.
    const entry = log.filter((line) => line.entry.kind === 'not-yet').at(-1)?.id;
    asked = [];
    let forgotten = false;
    beside = async () => {
      if (forgotten) return;
      forgotten = true;
      const forget = { kind: 'forget', entry, at: '2026-11-27T18:58:00Z' };
      const answer = await other.call('POST', `/api/runs/${first}/log`, forget);
      expect(answer.status, JSON.stringify(answer.body)).toBe(201);
    };
    expect((await bench.call('POST', `/api/runs/${second}/plan`, {})).status).toBe(201);
    beside = async () => undefined;
    expect(asked).toEqual(['replan', 'teach', 'replan']);
    expect(await learned(second)).toEqual(await fromLog());
    await other.close();
  });
});
