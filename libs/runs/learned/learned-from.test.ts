import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learnFrom, type RecipeEvidence } from '#clocks';
import { learned as learnedSchema, paces, type Learned, type RunTeachings } from '#contract';
import {
  learnedFrom,
  runFileInput,
  teachingsBasis,
  teachingsOf,
  writeClocks,
  writePlanInput,
  type PastRun,
  type RunsInput,
} from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { learnedUse } from '../amounts/learned-use.js';

fc.configureGlobal({ seed: 1871 });

type Observation = RunTeachings['observations'][number];
type Weighing = RunTeachings['weighings'][number];

const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
const observation: fc.Arbitrary<Observation> = fc
  .record({
    pace: fc.constantFrom('set' as const, 'cure' as const),
    recipe: fc.constantFrom('tiles', 'loaves', 'shells'),
    sigma: hundredths(20, 45),
    at: hundredths(-150, 150),
    width: hundredths(1, 80),
    kind: fc.constantFrom('exact', 'above', 'below', 'between'),
  })
  .map(({ at, width, kind, ...rest }) => ({
    ...rest,
    entries: [],
    ...(kind === 'exact' && { exact: at }),
    ...((kind === 'above' || kind === 'between') && { above: at }),
    ...((kind === 'below' || kind === 'between') && { below: at + width }),
  }));
const weighing: fc.Arbitrary<Weighing> = fc.record({
  design: fc.constant('tile'),
  part: fc.constant('sand'),
  pieces: fc.constantFrom(1, 6, 12, 24),
  usedG: hundredths(100, 90_000),
  at: fc.integer({ min: 29_000_000, max: 29_000_400 }),
  expectedMl: fc.constantFrom(20, 21),
});
const run: fc.Arbitrary<RunTeachings> = fc.record({
  observations: fc.array(observation, { maxLength: 4 }),
  weighings: fc.array(weighing, { maxLength: 3 }),
});
const manyRuns = fc.array(run, { minLength: 1, maxLength: 60 });

/** As it comes back from a database or a wire; its schema knows all of it. */
function kept(learned: Learned): Learned {
  return learnedSchema.parse(JSON.parse(JSON.stringify(learned)));
}

/** Each observation as it is, nothing put together. */
function allOf(runs: readonly RunTeachings[], pace: string): Map<string, RecipeEvidence> {
  const recipes = new Map<string, RecipeEvidence>();
  for (const { recipe, exact, ...one } of runs.flatMap(({ observations }) => observations)) {
    if (one.pace !== pace) continue;
    const sum = recipes.get(recipe) ?? { batches: 0, precision: 0, pull: 0, censored: [] };
    const precision = exact === undefined ? 0 : 1 / one.sigma ** 2;
    recipes.set(recipe, {
      batches: sum.batches + 1,
      precision: sum.precision + precision,
      pull: sum.pull + precision * (exact ?? 0),
      censored: exact === undefined ? [...sum.censored, one] : sum.censored,
    });
  }
  return recipes;
}

describe('what a workshop has learned', () => {
  it('of its paces is what all observations together say, to a thousandth of its doubt', () => {
    fc.assert(
      fc.property(manyRuns, (runs) => {
        for (const { pace, workshop, recipes } of learnedFrom(runs).paces) {
          const all = allOf(runs, pace);
          const exact = learnFrom(all);
          expect(recipes.map(({ recipe, batches }) => [recipe, batches])).toEqual(
            [...all].map(([recipe, { batches }]) => [recipe, batches]),
          );
          const pairs = recipes.map((each) => [each, exact.recipe(each.recipe)] as const);
          for (const [mine, its] of [[workshop, exact.workshop] as const, ...pairs]) {
            expect(Math.abs(mine.mean - its.mean)).toBeLessThan(0.001 * its.sd);
            expect(Math.abs(mine.sd / its.sd - 1)).toBeLessThan(0.001);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  it('of a short log is so to the last digit', () => {
    fc.assert(
      fc.property(fc.array(run, { maxLength: 2 }), (runs) => {
        for (const { pace, workshop, recipes } of learnedFrom(runs).paces) {
          const exact = learnFrom(allOf(runs, pace));
          expect(workshop).toEqual(exact.workshop);
          for (const { recipe, mean, sd } of recipes) expect({ mean, sd }).toEqual(exact.recipe(recipe));
        }
      }),
      { numRuns: 25 },
    );
  });

  it('of its pieces makes the belief that all weighings make one by one', () => {
    const part = loadRunFile('ok', 'plain-tiles').designs[0]!.parts.find(({ key }) => key === 'sand')!;
    if (part.kind !== 'batch') throw new Error('no batch');
    const sand = { ...part, amount: undefined, perPieceMl: 20.5 };
    const around = { densityGPerMl: 1.1 };
    fc.assert(
      fc.property(fc.array(run, { minLength: 20, maxLength: 60 }), (runs) => {
        const [use] = learnedFrom(runs).uses;
        const all = runs.flatMap(({ weighings }) => weighings);
        const mine = learnedUse(
          sand,
          around,
          use?.weighings.map((each) => ({ part: 'sand', ...each })) ?? [],
        );
        const its = learnedUse(sand, around, all);
        expect(mine.told.from).toEqual(its.told.from);
        for (const field of ['meanMl', 'pieces', 'shape', 'scale'] as const) {
          expect(mine.use[field] / its.use[field]).toBeCloseTo(1, 9);
        }
        expect(use?.weighings.length ?? 0).toBeLessThanOrEqual(8 + 4 * 2);
      }),
      { numRuns: 50 },
    );
  });

  it('is the same whether runs are added at once or one by one to what was kept', () => {
    fc.assert(
      fc.property(manyRuns, (runs) => {
        const apart = runs.reduce((before, one) => kept(learnedFrom([one], before)), learnedFrom([]));
        const together = learnedFrom(runs);
        expect(apart.paces).toEqual(together.paces);
        for (const [i, { weighings, ...use }] of together.uses.entries()) {
          expect(apart.uses[i]).toMatchObject(use);
          expect(apart.uses[i]?.weighings).toEqual(
            weighings.map((each) => ({
              ...each,
              usedG: expect.closeTo(each.usedG, 6),
              ...(each.squares !== undefined && { squares: expect.closeTo(each.squares, 3) }),
            })),
          );
        }
      }),
      { numRuns: 25 },
    );
  });

  it('takes the same room after a thousand runs as after five hundred, with the library less than 60 kB', () => {
    const demos = ['rockpool-tiles', 'orchard-loaves', 'honeycomb-tartlets'].map((name) =>
      loadRunFile('demo', name),
    );
    const [first] = demos;
    if (first === undefined) throw new Error('no demo');
    const designs = demos.flatMap((file) => file.designs);
    const recipes = demos.flatMap((file) => file.recipes);
    const sizeAfter = (count: number): number => {
      const runs = Array.from({ length: count }, (_, i): RunTeachings => {
        const design = designs[i % designs.length]!;
        const off = (n: number): number => 0.3 * Math.sin(i * 1.7 + n);
        const parts = design.parts.filter(({ kind }) => kind !== 'decor');
        const own = [...new Set(parts.flatMap((part) => (part.kind === 'batch' ? [part.recipe] : [])))];
        return {
          observations: own.flatMap((recipe) =>
            paces.map((pace, n) => ({
              ...{ pace, recipe, sigma: 0.25, entries: [`run-${String(i)}/#3`] },
              ...(i % 3 === 0 ? { exact: off(n) } : { above: off(n) - 0.2 }),
              ...(i % 3 === 2 && { below: off(n) + 0.2 }),
            })),
          ),
          weighings: parts.map(({ key }) => ({
            ...{ design: design.key, part: key, pieces: 6 * (1 + (i % 4)), usedG: 130 + off(1) },
            ...{ at: 29_000_000 + i * 1440, expectedMl: 20 },
          })),
        };
      });
      const input: RunsInput = {
        ...{ workshop: first.workshop, designs, recipes, fats: [], runs: [], log: [] },
        moulds: demos.flatMap((file) => file.moulds),
        learned: learnedFrom(runs),
      };
      return JSON.stringify(writePlanInput(input, minute(29_700_000))).length;
    };
    const size = sizeAfter(500);
    expect(size).toBeLessThan(60_000);
    expect(sizeAfter(1000) / size).toBeLessThan(1.02);
  });
});

const demo = loadRunFile('ok', 'plain-tiles');
const [order] = demo.runs;
const [design] = demo.designs;
if (order === undefined || design === undefined) throw new Error('no run');
const file = { ...demo, earlier: [] };
const log = [
  { kind: 'done', stage: 'pour-deep', startedAt: '2026-11-20T18:00:00Z', at: '2026-11-20T18:50:00Z' },
  { kind: 'done', stage: 'pour-sand', startedAt: '2026-11-20T19:30:00Z', at: '2026-11-20T20:00:00Z' },
  { kind: 'weighed', part: 'sand', pieces: 6, usedG: 170, at: '2026-11-20T20:10:00Z' },
  { kind: 'seen', part: 'sand', state: 'firm', saw: 'just-now', at: '2026-11-23T18:00:00Z' },
] as const;
const { recipes, fats, moulds, workshop } = file;
const past: PastRun = {
  ...{ order: { ...order, key: 'before' }, design, recipes, fats, moulds },
  log: log.map((entry) => ({ entry })),
};
const clocksOf = (input: RunsInput, at: number) => {
  const written = writeClocks(input);
  return written.ok ? written.value.runs[at] : written.issues;
};

describe('runs planned together', () => {
  it('teach each other as a run that is over would, beside what was learned from others', () => {
    const fast = {
      ...past,
      log: [...past.log.slice(0, 3), { entry: { ...log[3], at: '2026-11-22T04:00:00Z' } }],
    };
    const over = [fast, past].map((each) => teachingsOf(each, workshop).teachings);
    const alone = clocksOf({ ...file, learned: learnedFrom(over), teachings: over }, 0);
    const both: RunsInput = {
      ...{ ...file, runs: [order, { ...order, key: 'before', title: 'Before' }] },
      log: log.map((entry) => ({ run: 'before', entry })),
      ...{ learned: learnedFrom(over.slice(0, 1)), teachings: over.slice(0, 1) },
    };
    expect(alone).toHaveProperty('lessons.0');
    expect(clocksOf(both, 0)).toEqual(alone);
    // A run is not taught by itself.
    expect(clocksOf(both, 1)).toHaveProperty('lessons.1.observations.length', 1);
  });
});

describe('what one run teaches', () => {
  it('is empty for a run that logged nothing', () => {
    const { teachings, issues } = teachingsOf({ ...past, log: [] }, workshop);
    expect({ teachings, issues }).toEqual({ teachings: { observations: [], weighings: [] }, issues: [] });
  });

  it('is kept under another name where the room that it depends on is another', () => {
    const warm = { ...workshop, room: { temperatureC: 26, humidityPercent: 40 } };
    expect(teachingsBasis({ ...workshop, title: 'Another' })).toBe(teachingsBasis(workshop));
    expect(teachingsBasis(warm)).not.toBe(teachingsBasis(workshop));
    expect(teachingsBasis(warm, workshop.room)).toBe(teachingsBasis(workshop, workshop.room));
  });
});

describe('a run file whose logs cannot be true', () => {
  it('says so of its own log and of an earlier one at once', () => {
    const wrong = { kind: 'done', stage: 'turnip', at: '2026-11-20T20:00:00Z' } as const;
    const input = runFileInput({
      ...file,
      earlier: [{ run: { ...order, key: 'before' }, log: [{ entry: wrong }] }],
      log: [{ run: order.key, entry: wrong }],
    });
    expect(input.ok ? [] : input.issues.map(({ path }) => path.join('.'))).toEqual([
      'log.0.entry.stage',
      'earlier.0.log.0.entry.stage',
    ]);
  });
});
