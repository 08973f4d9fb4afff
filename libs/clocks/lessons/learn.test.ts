import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offsetPrior as prior } from '../offset-prior.js';
import { evidenceOf, type RecipeEvidence } from './evidence.js';
import { learn, learnFrom } from './learn.js';
import type { Observation } from './observation.js';

fc.configureGlobal({ seed: 1843 });

const exact = (y: number, recipe = 'tiles', sigma = 0.25): Observation => ({
  recipe,
  exact: y,
  sigma,
  entries: [],
});
const between = (above: number, below: number, recipe = 'tiles', sigma = 0.25): Observation => ({
  ...{ recipe, above, below, sigma },
  entries: [],
});

const recipe = fc.constantFrom('tiles', 'loaves', 'shells');
const sigma = fc.integer({ min: 15, max: 60 }).map((n) => n / 100);
const log = fc.integer({ min: -150, max: 150 }).map((n) => n / 100);
const anyExact = fc.record({ recipe, sigma, exact: log, entries: fc.constant([]) });
const anyCensored = fc
  .record({
    recipe,
    sigma,
    at: log,
    width: fc.integer({ min: 1, max: 100 }),
    kind: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ at, width, kind, ...rest }) => ({
    ...rest,
    entries: [],
    ...(kind !== 0 && { above: at }),
    ...(kind !== 1 && { below: at + width / 100 }),
  }));
const anyLog = fc.array(fc.oneof(anyExact, anyCensored), { maxLength: 12 });

describe('without a log', () => {
  it('the offsets are the prior, to the last bit', () => {
    const lessons = learn([]);
    expect(lessons.workshop).toEqual({ mean: 0, sd: 0.35 });
    expect(lessons.recipe('tiles')).toEqual({ mean: 0, sd: Math.sqrt(0.35 * 0.35 + 0.15 * 0.15) });
  });

  it('any prior stays what it is', () => {
    const deviation = fc.double({ min: 0.01, max: 2, noNaN: true });
    fc.assert(
      fc.property(deviation, deviation, (workshopSigma, recipeSigma) => {
        const lessons = learn([], { workshopSigma, recipeSigma });
        expect(lessons.workshop).toEqual({ mean: 0, sd: workshopSigma });
        expect(lessons.recipe('x').sd).toBe(Math.sqrt(workshopSigma ** 2 + recipeSigma ** 2));
      }),
    );
  });
});

describe('exact observations', () => {
  it('never leave more doubt than before', () => {
    fc.assert(
      fc.property(fc.array(anyExact, { maxLength: 12 }), anyExact, recipe, (before, more, key) => {
        const [less, known] = [learn(before), learn([...before, more])];
        expect(known.workshop.sd).toBeLessThan(less.workshop.sd);
        expect(known.recipe(key).sd).toBeLessThan(less.recipe(key).sd);
      }),
    );
  });

  it('draw the mean from the prior towards what was seen, and not beyond', () => {
    fc.assert(
      fc.property(fc.array(log, { minLength: 1, maxLength: 12 }), sigma, (ys, deviation) => {
        const lessons = learn(ys.map((y) => exact(y, 'tiles', deviation)));
        const seen = ys.reduce((sum, y) => sum + y, 0) / ys.length;
        for (const { mean } of [lessons.workshop, lessons.recipe('tiles')]) {
          expect(mean * Math.sign(seen)).toBeGreaterThanOrEqual(-1e-12);
          expect(Math.abs(mean)).toBeLessThanOrEqual(Math.abs(seen) + 1e-12);
        }
      }),
    );
  });

  /**
   * Where every batch says c, what is missing from c is the prior's weight. One recipe alone leaves the workshop's
   * offset 17 % of prior, however often it is made, since its own offset cannot be told from the workshop's:
   * 1 / (1 + 0.35²/(0.15² + 0.25²/20)) = 0.173; its forecasts rest on the sum of both, of which 2 % is left.
   */
  it('twenty of σ 0.25 leave less than 15 % of the prior’s weight', () => {
    const batches = (recipes: number) => Array.from({ length: 20 }, (_, i) => exact(1, String(i % recipes)));
    for (const recipes of [2, 4, 10]) {
      expect(1 - learn(batches(recipes)).workshop.mean).toBeLessThan(0.15);
      expect(1 - learn(batches(recipes)).recipe('0').mean).toBeLessThan(0.15);
    }
    expect(1 - learn(batches(1)).recipe('0').mean).toBeCloseTo(0.021, 3);
    expect(1 - learn(batches(1)).workshop.mean).toBeCloseTo(0.173, 3);
  });

  /**
   * ln 10 = 2.303 among twenty at 0 in four recipes. Its own recipe (six batches, five of them at 0) moves most:
   * P = 6/0.0625 = 96, B = 2.303/0.0625 = 36.84, 1 + τ²P = 3.16; the others P = 80, 1 + τ²P = 2.8.
   * var δ_w = 1/(8.163 + 96/3.16 + 3 · 80/2.8) = 0.008048, mean = 0.008048 · 36.84/3.16 = 0.0938;
   * its recipe (0.0938 + 0.0225 · 36.84)/3.16 = 0.292, the others 0.0938/2.8 = 0.0335.
   */
  it('one ten times too long among twenty draws its workshop a tenth and its recipe a third', () => {
    const good = Array.from({ length: 20 }, (_, i) => exact(0, String(i % 4)));
    const drawn = learn([...good, exact(Math.LN10, '0')]);
    expect(drawn.workshop.mean).toBeCloseTo(0.0938, 4);
    expect(drawn.recipe('0').mean).toBeCloseTo(0.292, 3);
    expect(drawn.recipe('1').mean).toBeCloseTo(0.0335, 4);
    expect(learn(good).workshop.mean).toBe(0);
  });
});

describe('censored observations', () => {
  it('that could not have been otherwise change nothing', () => {
    const exacts = [exact(0.4), exact(0.1, 'loaves')];
    const plain = learn(exacts);
    const notYetAtAHundredth = { recipe: 'tiles', above: Math.log(1 / 100), sigma: 0.25, entries: [] };
    const alreadyAtAHundredfold = { recipe: 'shells', below: Math.log(100), sigma: 0.25, entries: [] };
    for (const more of [notYetAtAHundredth, alreadyAtAHundredfold]) {
      const lessons = learn([...exacts, more]);
      expect(lessons.workshop.mean).toBeCloseTo(plain.workshop.mean, 10);
      expect(lessons.workshop.sd).toBeCloseTo(plain.workshop.sd, 10);
      expect(lessons.recipe('tiles').mean).toBeCloseTo(plain.recipe('tiles').mean, 10);
      expect(lessons.recipe('tiles').sd).toBeCloseTo(plain.recipe('tiles').sd, 10);
    }
  });

  it('between bounds that nearly meet teach what an exact one does', () => {
    const around = learn([between(0.6 - 1e-6, 0.6 + 1e-6), exact(0.2, 'loaves')]);
    const at = learn([exact(0.6), exact(0.2, 'loaves')]);
    expect(around.workshop.mean).toBeCloseTo(at.workshop.mean, 8);
    expect(around.recipe('tiles').mean).toBeCloseTo(at.recipe('tiles').mean, 8);
    expect(around.recipe('tiles').sd).toBeCloseTo(at.recipe('tiles').sd, 8);
  });

  it('draw upwards when not yet, downwards when already', () => {
    const notYet = { recipe: 'tiles', above: 0, sigma: 0.25, entries: [] };
    const already = { recipe: 'tiles', below: 0, sigma: 0.25, entries: [] };
    expect(learn([notYet]).workshop.mean).toBeGreaterThan(0.1);
    expect(learn([already]).workshop.mean).toBeCloseTo(-learn([notYet]).workshop.mean, 10);
  });

  it('of a hundred surprising batches and of absurd ones stay finite', () => {
    const notYet = { recipe: 'tiles', above: 1.5, sigma: 0.25, entries: [] };
    const slow = learn(Array.from({ length: 100 }, () => notYet));
    expect(slow.recipe('tiles').mean).toBeGreaterThan(1.5);
    expect(slow.recipe('tiles').mean).toBeLessThan(2.5);
    const torn = learn([between(6, 6.1, 'a', 0.1), between(-6.1, -6, 'b', 0.1)]);
    expect(torn.workshop.mean).toBeCloseTo(0, 8);
    expect(torn.recipe('a').mean).toBeCloseTo(-torn.recipe('b').mean, 8);
    expect(torn.recipe('a').mean).toBeGreaterThan(1);
  });
});

describe('any log', () => {
  it('teaches the same in any order', () => {
    fc.assert(
      fc.property(anyLog, fc.infiniteStream(fc.nat()), recipe, (log_, ranks, key) => {
        const shuffled = log_
          .map((each) => ({ each, rank: ranks.next().value as number }))
          .sort((a, b) => a.rank - b.rank)
          .map(({ each }) => each);
        const [one, other] = [learn(log_), learn(shuffled)];
        expect(other.workshop.mean).toBeCloseTo(one.workshop.mean, 10);
        expect(other.workshop.sd).toBeCloseTo(one.workshop.sd, 10);
        expect(other.recipe(key).mean).toBeCloseTo(one.recipe(key).mean, 10);
        expect(other.recipe(key).sd).toBeCloseTo(one.recipe(key).sd, 10);
      }),
      { numRuns: 40 },
    );
  });

  it('are learned alike at once and from evidence that was kept as text and added to', () => {
    fc.assert(
      fc.property(anyLog, anyLog, (first, second) => {
        const kept = JSON.stringify([...evidenceOf(first)]);
        const evidence = evidenceOf(second, new Map(JSON.parse(kept) as [string, RecipeEvidence][]));
        const [apart, together] = [learnFrom(evidence), learn([...first, ...second])];
        expect(apart.workshop).toEqual(together.workshop);
        for (const key of ['tiles', 'loaves', 'never-made']) {
          expect(apart.recipe(key)).toEqual(together.recipe(key));
        }
        const counted = [...evidence.values()].reduce((sum, { batches }) => sum + batches, 0);
        expect(counted).toBe(first.length + second.length);
      }),
      { numRuns: 40 },
    );
  });

  it('leaves less doubt of a recipe that was made than of one that never was', () => {
    fc.assert(
      fc.property(anyLog, recipe, (log_, key) => {
        const lessons = learn(log_);
        const unseen = lessons.recipe('never made');
        expect(unseen.mean).toBeCloseTo(lessons.workshop.mean, 12);
        expect(unseen.sd).toBeCloseTo(Math.hypot(lessons.workshop.sd, prior.recipeSigma), 12);
        expect(lessons.recipe(key).sd).toBeLessThanOrEqual(
          Math.hypot(prior.workshopSigma, prior.recipeSigma) + 1e-9,
        );
      }),
      { numRuns: 40 },
    );
  });

  it('lets a new recipe follow the workshop', () => {
    const slow = Array.from({ length: 8 }, (_, i) => exact(0.5, `r${String(i % 4)}`));
    const lessons = learn(slow);
    expect(lessons.workshop.mean).toBeGreaterThan(0.4);
    expect(lessons.recipe('new').mean).toBe(lessons.workshop.mean);
    expect(lessons.recipe('r0').sd).toBeLessThan(lessons.recipe('new').sd);
  });

  it.each<[string, Observation]>([
    ['no σ', exact(0, 'tiles', 0)],
    ['a σ that is no number', exact(0, 'tiles', NaN)],
    ['an exact time without end', exact(Infinity)],
    ['bounds without room', between(0.2, 0.2)],
    ['a bound that is no number', between(NaN, 1)],
  ])('is refused with %s', (_, observation) => {
    expect(() => learn([observation])).toThrow(RangeError);
  });

  it('is refused with a prior that knows the workshop already', () => {
    expect(() => learn([], { workshopSigma: 0, recipeSigma: 0.15 })).toThrow(RangeError);
    expect(() => learn([], { workshopSigma: 0.35, recipeSigma: -0.1 })).toThrow(RangeError);
  });
});
