import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learn } from '#clocks';
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
    doubt: hundredths(0, 20),
    day: fc.integer({ min: 20_000, max: 20_100 }),
    at: hundredths(-150, 150),
    width: hundredths(1, 80),
    kind: fc.constantFrom('exact', 'above', 'below', 'between'),
    opened: fc.option(hundredths(-100, 100), { nil: undefined }),
  })
  .map(({ at, width, kind, opened, ...rest }) => ({
    ...rest,
    ...(opened !== undefined && { opened }),
    ...{ entries: [], looks: kind === 'above' || kind === 'between' ? 1 : 0, missed: 0 },
    ...(kind === 'exact' && { exact: at }),
    ...((kind === 'above' || kind === 'between') && { above: at }),
    ...((kind === 'below' || kind === 'between') && { below: at + width, readyAfterDays: 3 }),
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
  earliest: fc.array(
    fc.record({
      recipe: fc.constantFrom('tiles', 'loaves'),
      state: fc.constantFrom('firm' as const, 'cured' as const),
      logRatio: hundredths(-100, 100),
    }),
    { maxLength: 2 },
  ),
  weighings: fc.array(weighing, { maxLength: 3 }),
});
const manyRuns = fc.array(run, { minLength: 1, maxLength: 60 });

/** As it comes back from a database or a wire; its schema knows all of it. */
function kept(learned: Learned): Learned {
  return learnedSchema.parse(JSON.parse(JSON.stringify(learned)));
}

describe('what a workshop has learned', () => {
  it('of its paces is what their observations say together', () => {
    fc.assert(
      fc.property(fc.array(run, { maxLength: 12 }), (runs) => {
        for (const { pace, workshop, spread, recipes } of learnedFrom(runs).paces) {
          const own = runs.flatMap(({ observations }) => observations).filter((each) => each.pace === pace);
          const of = learn(own);
          expect({ workshop, spread }).toEqual({ workshop: of.workshop, spread: of.spread });
          for (const { recipe, mean, sd, sharedSd, doubt } of recipes) {
            expect({ mean, sd, sharedSd }).toEqual(of.recipe(recipe, doubt));
          }
        }
      }),
      { numRuns: 10 },
    );
  });

  it('of how soon something was done is the soonest of each state', () => {
    const found = (recipe: string, state: 'firm' | 'cured', logRatio: number): RunTeachings => ({
      ...{ observations: [], weighings: [] },
      earliest: [{ recipe, state, logRatio }],
    });
    const of = [found('tiles', 'firm', 0.2), found('tiles', 'firm', -0.1), found('tiles', 'cured', 0.3)];
    const all = [
      { recipe: 'tiles', state: 'cured', logRatio: 0.3 },
      { recipe: 'tiles', state: 'firm', logRatio: -0.1 },
    ];
    expect(learnedFrom(of).earliest).toEqual(all);
    expect(learnedFrom(of.slice(1), learnedFrom(of.slice(0, 1))).earliest).toEqual(all);
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
        const sorted = ({ paces: all }: Learned) =>
          all.map(({ recipes, ...pace }) => ({
            ...pace,
            recipes: [...recipes].sort((a, b) => (a.recipe < b.recipe ? -1 : 1)),
          }));
        expect(sorted(apart)).toEqual(sorted(together));
        expect(apart.earliest).toEqual(together.earliest);
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
              ...{ pace, recipe, sigma: 0.25, doubt: 0.123, entries: [`run-${String(i)}/#3`] },
              ...{ day: 20_000 + 3 * i, looks: i % 4, missed: i % 3, readyAfterDays: 2.4 },
              ...(i % 3 === 0 ? { exact: off(n) } : { above: off(n) - 0.2 }),
              ...(i % 3 === 2 && { below: off(n) + 0.2 }),
            })),
          ),
          earliest: own.map((recipe) => ({ recipe, state: 'firm', logRatio: off(3) })),
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
    expect({ teachings, issues }).toEqual({
      teachings: { observations: [], earliest: [], weighings: [] },
      issues: [],
    });
  });

  it('is kept under another name where the room that it depends on is another', () => {
    const warm = { ...workshop, room: { ...workshop.room, temperatureC: 26, humidityPercent: 40 } };
    const draughty = { ...workshop, room: { ...workshop.room, air: 'moving' as const } };
    expect(teachingsBasis({ ...workshop, title: 'Another' })).toBe(teachingsBasis(workshop));
    expect(teachingsBasis(warm)).not.toBe(teachingsBasis(workshop));
    expect(teachingsBasis(draughty)).not.toBe(teachingsBasis(workshop));
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
