import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { PlanDocument, RunFile } from '#contract';
import type { Compute } from '../../apps/api/compute/compute.js';
import { loadRunFile } from '../support/run-files.js';
import { openTestApi, type TestApi } from '../support/test-api.js';

/** Two runs of twelve cups at once: cavities and trays for both, but one pair of hands. */
function twoRuns(): RunFile {
  const file = loadRunFile('ok', 'two-layer');
  const { workshop, moulds, runs } = file;
  return {
    ...file,
    workshop: { ...workshop, equipment: workshop.equipment.map((each) => ({ ...each, count: 2 })) },
    moulds: moulds.map((mould) => ({ ...mould, cavities: 24 })),
    runs: [
      runs[0]!,
      { ...runs[0]!, key: 'others', title: 'Twelve more' },
      { ...runs[0]!, key: 'thirds', title: 'Twelve again' },
    ],
  };
}

const file = twoRuns();
const [hers, others, thirds] = file.runs;
/** Done once, while the first plan is judged. */
let meanwhile: (() => Promise<void>) | undefined;
let judged = 0;
let api: TestApi;
let runId: string;
let first: PlanDocument;

const around = (compute: Compute): Compute => ({
  ...compute,
  async run(name, input, asker) {
    const answer = await compute.run(name, input, asker);
    if (name === 'judge') {
      judged += 1;
      const act = meanwhile;
      meanwhile = undefined;
      await act?.();
    }
    return answer;
  },
});

beforeAll(async () => {
  api = await openTestApi('2026-11-27T12:00:00Z', file, undefined, { around });
  await api.stock(file);
  runId = (await api.call('POST', '/api/runs', hers)).body.run.id;
  await api.renewed();
  first = await shown();
});
afterAll(() => api.close());

async function shown(call = api.call): Promise<PlanDocument> {
  return (await call('GET', `/api/runs/${runId}/plan`)).body.document;
}

/** Where the plan has it to be done again if it is not ready. */
function soonAfter({ runs }: PlanDocument, key: string): string {
  const { endAt } = runs[0]!.stages.find((stage) => stage.key === key)!;
  return new Date(Date.parse(endAt) + 40 * 60_000).toISOString();
}

/** A run whose first pour takes the hours just after the unmoulding of the first. */
async function takeHours(order = others, call = api.call): Promise<string> {
  const { id } = (await call('POST', '/api/runs', order)).body.run;
  const pins = [{ stage: 'pour-under', startAt: soonAfter(first, 'unmould') }];
  const put = await call('POST', `/api/runs/${id}/plan`, { pins });
  expect(put.status, JSON.stringify(put.body)).toBe(201);
  return id;
}

/** The oracle: what the run comes to where it is planned anew with every stage where it was. */
async function plannedAnew(): Promise<PlanDocument> {
  const pins = first.runs[0]!.stages.map(({ key, startAt }) => ({ stage: key, startAt }));
  const { status, body } = await api.call('POST', `/api/runs/${runId}/plan`, { pins });
  expect(status).toBe(201);
  return body.document;
}

const starts = ({ runs }: PlanDocument) => runs[0]!.stages.map(({ key, startAt }) => [key, startAt]);
const figures = ({ odds, weakLinks, guarantee, runs }: PlanDocument) => ({
  ...{ odds, weakLinks, guarantee },
  ...days({ runs }),
});
const days = ({ runs }: Pick<PlanDocument, 'runs'>) => {
  const [{ usable, ready, best }] = runs as [PlanDocument['runs'][number]];
  return { usable, ready, best };
};

/** Reads the stream until something of the plans is told. */
async function nextJudged(url: string): Promise<unknown> {
  const leave = new AbortController();
  const headers = { authorization: `Bearer ${api.key}` };
  const response = await fetch(`${url}/api/inbox/stream`, { headers, signal: leave.signal });
  let text = '';
  const decoder = new TextDecoder();
  for await (const chunk of response.body ?? []) {
    text += decoder.decode(chunk, { stream: true });
    const found = /event: odds\ndata: (.*)\n\n/.exec(text);
    if (!found) continue;
    setTimeout(() => leave.abort());
    return JSON.parse(found[1] ?? '');
  }
  return undefined;
}

describe('the odds of a stored plan', () => {
  it('are renewed when another run takes its hours, everywhere, and nothing moves', async () => {
    const told = nextJudged(api.url);
    const other = await takeHours();
    await api.renewed();
    const now = await shown();
    expect(now.odds!.soundByTheDay).toBeLessThan(first.odds!.soundByTheDay - 0.03);
    expect(starts(now)).toEqual(starts(first));
    expect(await told).toEqual({ runs: [runId] });

    const revision = (await api.call('GET', `/api/runs/${runId}/plan`)).body;
    expect(revision.number).toBe(1);
    const odds = (await api.call('GET', `/api/runs/${runId}/odds`)).body;
    expect(odds).toEqual({ plan: 1, odds: now.odds, weakLinks: now.weakLinks });
    expect((await api.call('GET', `/api/runs/${runId}/plans/1`)).body.document).toEqual(now);

    // Planned anew, with nothing else changed, it has just these.
    const anew = await plannedAnew();
    expect(starts(anew)).toEqual(starts(first));
    expect(figures(anew)).toEqual(figures(now));

    expect((await api.call('DELETE', `/api/runs/${other}`)).status).toBe(204);
    await api.renewed();
    expect(figures(await shown())).toEqual(figures(first));
  });

  it('are renewed when hours change', async () => {
    const { version, facts } = (await api.call('GET', '/api/workshop')).body;
    const saturday = {
      ...facts,
      hours: { ...facts.hours, weekly: { ...facts.hours.weekly, saturday: [], sunday: [] } },
    };
    const put = await api.call('PUT', '/api/workshop', { version, facts: saturday });
    expect(put.status, JSON.stringify(put.body)).toBe(200);
    await api.renewed();
    const now = await shown();
    expect(starts(now)).toEqual(starts(first));
    expect(now.odds!.soundByTheDay).not.toBe(first.odds!.soundByTheDay);
    await api.call('PUT', '/api/workshop', { version: version + 1, facts });
    await api.renewed();
    expect(figures(await shown())).toEqual(figures(first));
  });

  it('come with the days from when on the lot may be used, is cured and at its best', async () => {
    expect(first.runs[0]).toMatchObject({
      usable: { low: expect.any(String) },
      best: { low: expect.any(String) },
    });
    // Where the last judgement came to another day of one, and told nothing of the other, that is what is shown.
    const before = '2026-01-01T00:00:00.000Z';
    const best = { low: before, likely: before, high: before };
    await api.sql(`UPDATE plan_judgement SET basis = 'of before', judgement =
      jsonb_set(judgement #- '{ready,0,usable}', '{ready,0,best}', '${JSON.stringify(best)}')`);
    expect(days(await shown())).toEqual({ usable: undefined, ready: first.runs[0]!.ready, best });
    // Judged anew, it has its own again, and open pages are told.
    const told = nextJudged(api.url);
    const { version, facts } = (await api.call('GET', '/api/workshop')).body;
    await api.call('PUT', '/api/workshop', { version, facts: { ...facts, title: 'A name of its own' } });
    await api.renewed();
    expect(days(await shown())).toEqual(days(first));
    expect(await told).toEqual({ runs: [runId] });
  });

  it('are judged anew only where they rest on something else', async () => {
    const { version, facts } = (await api.call('GET', '/api/workshop')).body;
    const rows = async () => api.sql('SELECT run_id, basis, judgement FROM plan_judgement ORDER BY run_id');
    const before = await rows();
    const [told, asked] = [vi.fn<(runIds: unknown) => void>(), judged];
    void nextJudged(api.url).then(told, () => undefined);
    await api.call('PUT', '/api/workshop', { version, facts: { ...facts, title: 'Another name' } });
    await api.renewed();
    expect(judged).toBe(asked + 1);
    expect(await rows()).toEqual(before);
    expect(told).not.toHaveBeenCalled();
  });

  it('are the same from every process, whichever made the change and whoever judged first', async () => {
    const second = await api.another();
    // Another process takes the hours, and judges that, while the judgement without it is on its way.
    meanwhile = async () => {
      await takeHours(thirds, second.call);
      await second.renewed();
    };
    const { version, facts } = (await api.call('GET', '/api/workshop')).body;
    const { weekly } = facts.hours;
    const thursday = { ...facts.hours, weekly: { ...weekly, thursday: [{ from: '18:00', to: '18:30' }] } };
    await api.call('PUT', '/api/workshop', { version, facts: { ...facts, hours: thursday } });
    await api.renewed();
    const now = await shown();
    expect(now.odds!.soundByTheDay).toBeLessThan(first.odds!.soundByTheDay - 0.03);
    expect(await shown(second.call)).toEqual(now);
    // Both may find at once that something is to be judged, and come to the same.
    await api.call('PUT', '/api/workshop', { version: version + 1, facts: { ...facts, title: 'For both' } });
    await second.call('PUT', '/api/workshop', { version: version + 2, facts });
    await Promise.all([second.renewed(), api.renewed()]);
    expect(await shown(second.call)).toEqual(now);
    expect(figures(await plannedAnew())).toEqual(figures(now));
    await second.close();
  });
});
