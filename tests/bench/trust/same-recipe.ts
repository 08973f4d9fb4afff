import { planRuns, runFileInput, type RunsInput } from '#runs';
import { minute, normalCdf } from '#units';
import { assessRuns } from '../../../libs/runs/assess-runs.js';
import { atMost, watched, type Figure } from '../../support/figure.js';
import { loadRunFile } from '../../support/run-files.js';

const PARTS = 6;
const POURED = Date.parse('2026-11-27T09:00:00Z');
const NOW = Date.parse('2026-12-02T08:00:00Z');
const DUE_DAY = '2027-01-22';
const DUE = Date.parse('2027-01-23T00:00:00Z');
const SCENARIOS = 4000;

/**
 * One recipe in six parts, and the same recipe under more names: names lower the odds only as far as recipes differ. The odds of
 * being cured in time are held against the same belief, integrated over workshop and recipes, with what the plan unmoulds when.
 */
export function sameRecipe(): Figure[] {
  return [1, 2, 4, 6].flatMap((names) => {
    const input = inputOf(names);
    const [assessed] = assessedRuns(input);
    const cured = assessed?.clocks.get('part-0')?.get('cured');
    const planned = planRuns(input, { now: minute(NOW / 60_000), scenarios: SCENARIOS });
    if (cured === undefined || !planned.ok) throw new Error('no plan');
    const stages = planned.value.runs[0]?.stages ?? [];
    const left = stages.flatMap(({ kind, endAt }) =>
      kind === 'unmould' ? [(DUE - Date.parse(endAt)) / 60_000 / cured.medianMin] : [],
    );
    const integrated = overNormal((workshop) => {
      let all = 1;
      for (let name = 0; name < names; name += 1) {
        const own = left.filter((_, i) => i % names === name);
        all *= overNormal((recipe) =>
          own.reduce((product, share) => {
            const offset = workshop * cured.sharedSigma + recipe * cured.recipeSigma;
            return product * normalCdf((Math.log(share) - offset) / cured.batchSigma);
          }, 1),
        );
      }
      return all;
    });
    const odds = planned.value.odds?.soundByTheDay ?? 0;
    const of = `one recipe under ${String(names)} names, cured in time`;
    return [
      watched(`${of}: odds`, 100 * odds, '%', 'higher'),
      atMost(`${of}: odds off what is integrated`, 100 * Math.abs(odds - integrated), 'points', 2),
    ];
  });
}

function assessedRuns(input: RunsInput) {
  const taken = assessRuns(input);
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  return taken.value.map(({ assessed }) => assessed);
}

/** The mean of a function of a standard normal, by the trapezoidal rule. */
function overNormal(of: (z: number) => number): number {
  let [sum, total] = [0, 0];
  for (let k = -50; k <= 50; k += 1) {
    const weight = Math.exp(-((k / 10) ** 2) / 2);
    sum += weight * of(k / 10);
    total += weight;
  }
  return sum / total;
}

/** All is poured and unmoulded but for the last part, which is firm long since: only the cure is open. */
function inputOf(names: number): RunsInput {
  const read = runFileInput(loadRunFile('ok', 'two-layer'));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { workshop, recipes, moulds, designs, runs } = read.value;
  const [[recipe], [mould], [design], [order]] = [recipes, moulds, designs, runs];
  const [part] = design?.parts ?? [];
  const [pour] = design?.stages ?? [];
  const unmould = design?.stages.find(({ kind }) => kind === 'unmould');
  if (!recipe || !mould || !design || !order || !pour || !unmould || part?.kind !== 'batch') {
    throw new Error('not the file that was meant');
  }
  const open = [{ from: '08:00', to: '21:00' }];
  const { weekly } = workshop.hours;
  const always = Object.fromEntries(Object.keys(weekly).map((day) => [day, open])) as typeof weekly;
  const parts = Array.from({ length: PARTS }, (_, i) => ({
    ...part,
    ...{ key: `part-${String(i)}`, recipe: `name-${String(i % names)}`, mould: `mould-${String(i)}` },
  }));
  const stages = parts.flatMap(({ key }) => [
    { ...pour, key: `pour-${key}`, part: key },
    { ...unmould, key: `unmould-${key}`, part: key, needs: [] },
  ]);
  const log = stages.slice(0, -1).map(({ key, kind }, i) => {
    const at = POURED + (kind === 'pour' ? 0 : 72 * 3_600_000) + i * 300_000;
    const [startedAt, endedAt] = [at, at + 240_000].map((ms) => new Date(ms).toISOString());
    return {
      run: order.key,
      entry: { kind: 'done' as const, stage: key, startedAt, at: endedAt ?? '' },
    };
  });
  return {
    ...read.value,
    workshop: { ...workshop, hours: { ...workshop.hours, weekly: always } },
    recipes: Array.from({ length: names }, (_, i) => ({ ...recipe, key: `name-${String(i)}` })),
    moulds: parts.map(({ mould: key }) => ({ ...mould, key })),
    designs: [{ ...design, parts, stages, links: [], waits: [] }],
    runs: [{ ...order, startAfter: '2026-11-27T09:00', readyBy: DUE_DAY }],
    log,
  };
}
