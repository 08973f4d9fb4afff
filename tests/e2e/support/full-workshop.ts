import { readDemos, loadDemoWorkshop } from '../../../apps/api/demo/load-demo.js';
import type { Answer, TestApi } from '../../support/test-api.js';
import { loadRunFile } from '../../support/run-files.js';
import { nonsenseFor, withNonsense } from './nonsense.js';

/** The demo workshop with something of all that pages can show, under titles of no language. */
export interface FullWorkshop {
  /** Signs in to the workshop. */
  readonly key: string;
  /** Ids of its runs: as planned, begun with mishaps, without a plan, and curing with weigh-ins. */
  readonly runs: Readonly<Record<'planned' | 'begun' | 'stuck' | 'curing', string>>;
  readonly things: Readonly<Record<'designs' | 'recipes' | 'moulds' | 'fats', readonly string[]>>;
  /** Keys of what it has, so that a page can be searched for them; what English calls so too is none. */
  readonly keys: readonly string[];
}

/** When a bench has to begin for all of this to have happened on it. */
export const LONG_AGO = '2026-10-30T17:30:00Z';
const FRIDAY = '2026-11-27T17:30:00Z';

/** @param bench at LONG_AGO; its own workshop stays empty */
export async function fullWorkshop(bench: TestApi): Promise<FullWorkshop> {
  const demos = readDemos().map(({ name, file }) => ({ name, file: withNonsense(file) }));
  const { id: workshop } = await loadDemoWorkshop(bench.storage, bench.clock.now(), { demos });
  const { raw: key } = await bench.storage.keys.create(workshop, 'Zukey');
  const call = async (method: string, path: string, body?: unknown): Promise<Answer['body']> => {
    const answer = await bench.call(method, path, body, { authorization: `Bearer ${key}` });
    if (answer.status >= 400) throw new Error(`${method} ${path}: ${JSON.stringify(answer.body)}`);
    return answer.body;
  };
  const log = (run: string, entry: object): Promise<{ entry: { id: string } }> =>
    call('POST', `/api/runs/${run}/log`, entry);

  const cups = withNonsense(loadRunFile('ok', 'two-layer'));
  for (const mould of cups.moulds) await call('POST', '/api/moulds', mould);
  for (const recipe of cups.recipes) await call('POST', '/api/recipes', recipe);
  for (const design of cups.designs) await call('POST', '/api/designs', withoutNeeds(design));
  await call('POST', '/api/fats', ownFat);
  const made = await call('POST', '/api/runs', { ...cups.runs[0], startAfter: '2026-10-30T18:00' });
  const curing: string = made.run.id;
  for (;;) {
    const { document } = await call('GET', `/api/runs/${curing}/plan`);
    const [next] = document.runs[0].stages
      .filter(({ status }: { status: string }) => status === 'planned')
      .sort((a: { startAt: string }, b: { startAt: string }) => a.startAt.localeCompare(b.startAt));
    if (next === undefined) break;
    advanceTo(next.endAt);
    await log(curing, { kind: 'done', stage: next.key, startedAt: next.startAt, at: next.endAt });
  }
  for (const [day, massG] of [
    ['2026-11-03', 480],
    ['2026-11-10', 462],
    ['2026-11-20', 447],
  ] as const) {
    advanceTo(`${day}T19:00:00Z`);
    await log(curing, { kind: 'weigh-in', pieces: 6, massG, at: `${day}T18:30:00Z` });
  }
  advanceTo(FRIDAY);
  const stored: { id: string; key: string }[] = await call('GET', '/api/runs');
  const run = (wanted: string): string => stored.find((each) => each.key === wanted)?.id ?? '';
  const begun = run('harbour-market');
  const tartlets = demos.flatMap(({ file }) => file.runs).find(({ key: order }) => order === 'tartlets');
  const stuck = (await call('POST', '/api/runs', { ...tartlets, readyBy: '2026-12-01' })).run.id;
  advanceTo('2026-11-27T19:10:00Z');
  for (const [stage, at] of [
    ['lye-deep', '2026-11-25T18:42:00Z'],
    ['lye-sand', '2026-11-25T18:54:00Z'],
    ['lye-foam', '2026-11-25T19:06:00Z'],
  ] as const) {
    await log(begun, { kind: 'done', stage, at });
  }
  await log(begun, { kind: 'done', stage: 'pour-deep', startedAt: FRIDAY, at: '2026-11-27T18:45:00Z' });
  const at = '2026-11-27T18:55:00Z';
  const look = { kind: 'seen', part: 'deep', state: 'skinned', saw: 'already', at };
  const slip = await log(begun, { ...look, confirmed: true });
  await log(begun, { kind: 'take-back', entry: slip.entry.id, at });
  await log(begun, { kind: 'seen', part: 'deep', state: 'holds-layer', saw: 'not-yet', at });
  await log(begun, { kind: 'not-yet', stage: 'pour-sand', at, note: nonsenseFor('note') });
  await log(begun, { kind: 'mishap', part: 'shells', mishap: 'cracked', response: 'remake', pieces: 3, at });
  const kept = { title: nonsenseFor('leftover'), massG: 120, madeAt: at, at };
  const ledger = [
    { kind: 'purchase', material: 'olive', amount: 900, price: 7, at },
    { kind: 'written-off', material: 'olive', amount: 100, at },
    { kind: 'count', material: 'nu-zulip', title: nonsenseFor('sponges'), unit: 'piece', amount: 12, at },
    { kind: 'leftover-kept', form: 'dough', run: 'harbour-market', part: 'deep', ...kept },
    { kind: 'leftover-kept', form: 'small-pieces', ...kept },
  ];
  for (const [i, entry] of ledger.entries()) {
    await call('POST', '/api/stock/entries', {
      id: `01900000-0000-7000-8000-00000000000${String(i)}`,
      entry,
    });
  }

  return {
    key,
    runs: { planned: run('orchard'), begun, stuck, curing },
    things: {
      designs: await idsOf('designs'),
      recipes: await idsOf('recipes'),
      moulds: await idsOf('moulds'),
      fats: await idsOf('fats'),
    },
    keys: demos
      .flatMap(({ file }) => keysIn(file))
      .filter((each) => each.includes('-') && each !== 'melt-and-pour'),
  };

  function advanceTo(instant: string): void {
    bench.clock.advance(Math.max(0, (Date.parse(instant) - bench.clock.now().getTime()) / 60_000));
  }
  async function idsOf(kind: string): Promise<string[]> {
    return (await call('GET', `/api/${kind}`)).map(({ id }: { id: string }) => id);
  }
}

const ownFat = {
  key: 'own-fat',
  title: nonsenseFor('own fat'),
  saponificationMgKohPerG: 190,
  fattyAcidsPercent: { 'C16:0': 10, 'C18:1': 75, 'C18:2': 15 },
  densityGPerMl: 0.915,
  source: nonsenseFor('source'),
};

/** The demo workshop has no such equipment. */
function withoutNeeds<D extends { readonly stages: readonly object[] }>(design: D): D {
  return { ...design, stages: design.stages.map((stage) => ({ ...stage, needs: [] })) };
}

function keysIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(keysIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) =>
    name === 'key' && typeof inner === 'string' ? [inner] : keysIn(inner),
  );
}
