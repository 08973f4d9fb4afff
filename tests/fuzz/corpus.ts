import type { RunFile } from '#contract';
import { smallJpeg } from '../support/small-jpeg.js';

/** Bodies that make sense, by route; each is sent as it is now and then, and changed most of the time. */
export type Corpus = Readonly<Record<string, readonly unknown[]>>;

/** @param at an instant that has just been, for what is logged */
export function corpusFrom(file: RunFile, key: string, at: string): Corpus {
  const [run] = file.runs;
  const [design] = file.designs;
  const [recipe] = file.recipes;
  const [mould] = file.moulds;
  if (run === undefined || design === undefined || recipe === undefined || mould === undefined)
    throw new Error('a corpus needs a run, a design, a recipe and a mould');
  const fat = {
    ...{ key: 'fuzz-fat', title: 'Fat', saponificationMgKohPerG: 190, fattyAcidsPercent: { 'C18:1': 70 } },
    ...{ densityGPerMl: 0.914, source: 'made up', confirmed: true },
  };
  const span = { from: '06:00', to: '07:00' };
  const date = run.startAfter.slice(0, 10);
  const part = design.parts[0]?.key ?? '';
  const parts = design.parts.map(({ key }) => key);
  const entries = [
    ...design.stages.flatMap(({ key: stage }) => [
      { kind: 'done', stage, at },
      { kind: 'not-yet', stage, at },
    ]),
    { kind: 'mishap', part, mishap: 'seized', at },
    { kind: 'seen', part, state: 'firm', saw: 'not-yet', at },
    { kind: 'weigh-in', pieces: 3, massG: 300, at },
    { kind: 'weighed', part, pieces: 3, usedG: '9 oz', at },
    { kind: 'note', stage: design.stages[0]?.key, note: 'Fine', at },
    { kind: 'forget', entry: 'none', at },
    { kind: 'take-back', entry: 'none', at },
  ];
  const changes = [
    { kind: 'recipe', recipe: recipe.key, lyeConcentrationPercent: 31 },
    { kind: 'start', run: run.key, startAfter: run.startAfter },
    { kind: 'hours', added: span, date, spans: [span] },
    { kind: 'count', run: run.key, count: 2 },
    { kind: 'split', run: run.key, count: 1, rest: { ...run, key: 'fuzz-rest', count: 1 } },
    { kind: 'cavities', mould: mould.key, cavities: 90 },
    {
      kind: 'drop-parts',
      run: run.key,
      entries: [{ kind: 'mishap', part, mishap: 'ran-short', response: 'drop-part', at }],
    },
    { kind: 'ready-by', run: run.key, readyBy: '2027-12-01' },
    { kind: 'plan-anew' },
  ];
  const files = [{ ...file, log: [] }];
  const replacing = (content: unknown) => [{ version: 1, content }];
  return {
    'POST /api/moulds': file.moulds,
    'PUT /api/moulds/{id}': replacing(mould),
    'POST /api/fats': [fat],
    'PUT /api/fats/{id}': replacing(fat),
    'POST /api/recipes': file.recipes,
    'PUT /api/recipes/{id}': replacing(recipe),
    'POST /api/designs': file.designs,
    'PUT /api/designs/{id}': replacing(design),
    'PUT /api/workshop': [{ version: 1, facts: file.workshop }],
    'POST /api/runs': [
      run,
      { ...run, recipes: [{ recipe: recipe.key, sodiumLactatePercent: 1 }] },
      { ...run, groups: [{ key: 'all', title: 'All', count: run.count, parts }] },
    ],
    'POST /api/runs/{id}/plan': [{}, { seed: 3 }, { pins: [{ stage: design.stages[0]?.key, startAt: at }] }],
    // Most that can be logged can be so at one point only; how a run begins is what makes sense most often.
    'POST /api/runs/{id}/log': [
      ...entries,
      ...entries.slice(0, 1),
      ...entries.slice(0, 1),
      ...entries.slice(0, 1),
    ],
    'POST /api/runs/{id}/photos': [
      { id: '018f0000-0000-7000-8000-000000000001', data: smallJpeg.toString('base64') },
    ],
    'POST /api/runs/{id}/change': changes.map((change) => ({ change })),
    'POST /api/runs/{id}/what-if': [
      ...changes.map((change) => ({ change })),
      ...entries.map((entry) => ({ entries: [entry] })),
    ],
    'POST /api/latest-start': [{ order: { ...run, readyBy: '2027-12-01' }, odds: 0.5 }],
    'POST /api/amounts': [run],
    'POST /api/stock/entries': [
      { kind: 'purchase', material: 'olive', amount: '2 lb', price: 9, at },
      { kind: 'count', material: 'olive', amount: 700, at },
      { kind: 'written-off', material: 'wax', unit: 'piece', amount: 3, at },
      { kind: 'leftover-kept', title: 'Rest', form: 'dough', massG: 80, madeAt: at, at },
      { kind: 'leftover-used', leftover: '01900000-0000-7000-8000-000000000003', massG: 8, at },
      { kind: 'take-back', entry: '01900000-0000-7000-8000-000000000000', at },
    ].map((entry, i) => ({ id: `01900000-0000-7000-8000-00000000000${String(i)}`, entry })),
    'POST /api/plan-preview': files,
    'POST /api/amounts-preview': files,
    'POST /api/clocks-preview': files,
    'POST /api/session': [{ code: 'ABCD-EFGH' }, { key, device: 'fuzz' }],
  };
}
