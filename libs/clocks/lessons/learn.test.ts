import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evidenceOf } from './evidence.js';
import { learn, learnFrom, learningPrior } from './learn.js';
import type { Observation } from './observation.js';

fc.configureGlobal({ seed: 1843 });

const seen = (over: Partial<Observation>): Observation => ({
  ...{ recipe: 'tiles', sigma: 0.25, doubt: 0.1, looks: 0, missed: 0, day: 20_000, entries: [] },
  ...over,
});
const exact = (y: number, recipe = 'tiles'): Observation => seen({ exact: y, recipe });
/** Found ready after so many days, not yet so at the look before; the rules say two. */
const between = (notYet: number, ready: number, over: Partial<Observation> = {}): Observation =>
  seen({
    ...{ above: Math.log(notYet / 2), below: Math.log(ready / 2), readyAfterDays: ready, looks: 1 },
    ...over,
  });
const done = (ready: number, over: Partial<Observation> = {}): Observation =>
  seen({ below: Math.log(ready / 2), readyAfterDays: ready, ...over });
const times = (count: number, of: (i: number) => Observation): Observation[] =>
  Array.from({ length: count }, (_, i) => of(i));
/** Evenly spread about 0, with this standard deviation. */
const even = (i: number, count: number, sd: number): number => sd * Math.sqrt(12) * ((i + 0.5) / count - 0.5);

const widthOf = (observations: readonly Observation[]): number => {
  const { spread, recipe } = learn(observations);
  return Math.hypot(0.25 * spread, recipe('tiles', 0.1).sd);
};

describe('without a log', () => {
  it('the offsets are the prior, and batches vary as the rules say', () => {
    const { workshop, spread, batches, recipe } = learn([]);
    expect({ workshop, spread, batches }).toEqual({ workshop: { mean: 0, sd: 0.35 }, spread: 1, batches: 0 });
    expect(recipe('tiles', 0.2)).toEqual({
      ...{ mean: 0, sharedSd: 0.35 },
      sd: Math.sqrt(0.35 ** 2 + 0.15 ** 2 + 0.2 ** 2),
    });
  });

  it('refuses a prior that is none', () => {
    for (const bad of [{ workshopSigma: 0 }, { recipeSigma: 0 }, { workshopSigma: NaN }]) {
      expect(() => learn([], { ...learningPrior, ...bad })).toThrow(RangeError);
    }
  });
});

describe('stages that are only ever done', () => {
  it('teach nothing, however many', () => {
    const { workshop, spread, batches } = learn(times(60, (i) => done(2 + (i % 3))));
    expect({ workshop, spread, batches }).toEqual({ workshop: { mean: 0, sd: 0.35 }, spread: 1, batches: 0 });
  });

  it('tell of quick soap where their maker writes down what is not ready', () => {
    const honest = times(6, () => between(1.8, 2.4));
    const early = learn([...honest, ...times(20, () => done(1.4))]);
    expect(early.recipe('tiles').mean).toBeLessThan(learn(honest).recipe('tiles').mean - 0.1);
  });

  /** As from soap of 1.3 days, with a spread 1.6 times that of the rules, that is first looked at after two. */
  it('do not make quick soap that is nearly always ready at the first look steady, nor keep its forecast late', () => {
    const { spread, recipe } = learn([...times(3, () => between(2.1, 3.1)), ...times(27, () => done(2.2))]);
    expect(spread).toBeGreaterThan(0.95);
    expect(2 * Math.exp(recipe('tiles').mean)).toBeLessThan(1.6);
  });

  /** Ready at four days, looked at daily from two, a “not yet” in one batch of three: without its habit this looks like soap of two days. */
  it('do not where it is hardly ever written', () => {
    const seldom = times(60, (i) =>
      i % 3 === 0 ? between(2.1 + (i % 2), 4.1, { looks: 1 }) : done(4.1 + (i % 2) / 10),
    );
    const { mean } = learn(seldom).recipe('tiles');
    expect(mean).toBeGreaterThan(Math.log(2) - 0.25);
    expect(mean).toBeLessThan(Math.log(2) + 0.1);
  });
});

describe('looks', () => {
  it('put the forecast between them', () => {
    for (const [notYet, ready] of [
      [0.8, 1],
      [2, 2.5],
      [3.6, 4.4],
    ] as const) {
      const { mean } = learn(times(20, () => between(notYet, ready))).recipe('tiles');
      expect(2 * Math.exp(mean)).toBeGreaterThan(notYet * 0.97);
      expect(2 * Math.exp(mean)).toBeLessThan(ready * 1.03);
    }
  });

  it('narrow the band of a steady maker, and keep that of a careless one wide', () => {
    const of = (sd: number) => widthOf(times(30, (i) => exact(even(i, 30, sd))));
    expect(of(0.1)).toBeLessThan(0.14);
    expect(of(0.25)).toBeGreaterThan(0.22);
    expect(of(0.4)).toBeGreaterThan(0.36);
    expect(of(0.1)).toBeLessThan(of(0.25));
  });

  it('never leave the prior’s band wider by saying what was expected', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), (count) => {
        const [less, more] = [count, count + 1].map((n) => widthOf(times(n, () => exact(0)))) as [
          number,
          number,
        ];
        expect(more).toBeLessThanOrEqual(less + 1e-9);
        expect(less).toBeLessThan(Math.hypot(0.25, 0.35, 0.15, 0.1));
      }),
      { numRuns: 10 },
    );
  });

  it('that could not have been otherwise leave the band as it is', () => {
    const hopeless = times(5, () => seen({ above: -4, looks: 1 }));
    expect(widthOf(hopeless)).toBeCloseTo(widthOf([]), 2);
  });

  it('say the same in any order', () => {
    const log = fc.array(
      fc
        .record({
          at: fc.integer({ min: 5, max: 50 }),
          more: fc.integer({ min: 1, max: 30 }),
          day: fc.nat(300),
        })
        .map(({ at, more, day }) => between(at / 10, (at + more) / 10, { day })),
      { minLength: 1, maxLength: 30 },
    );
    fc.assert(
      fc.property(log, (observations) => {
        const [there, back] = [learn(observations), learn([...observations].reverse())];
        expect(back.workshop.mean).toBeCloseTo(there.workshop.mean, 9);
        expect(back.recipe('tiles').sd).toBeCloseTo(there.recipe('tiles').sd, 9);
        expect(back.spread).toBeCloseTo(there.spread, 9);
      }),
      { numRuns: 15 },
    );
  });

  /** The grid has steps of 0.04, and shifts of whole steps move nothing against it. */
  it('that all come later by a factor move the sum of prior and log by less than that, the more of them the closer', () => {
    const by = 0.4;
    const of = (count: number, later: number) =>
      learn(times(count, (i) => exact(even(i, count, 0.2) + later))).recipe('tiles').mean;
    const moved = [3, 10, 40].map((count) => of(count, by) - of(count, 0));
    expect(moved.every((each) => each > 0 && each < by)).toBe(true);
    expect(moved[0]).toBeLessThan(moved[1] ?? 0);
    expect(moved[2]).toBeGreaterThan(0.93 * by);
  });

  it('of one recipe tell of another as far as they share a workshop', () => {
    const { recipe, workshop } = learn(times(12, () => exact(0.5)));
    const other = recipe('loaves', 0.2);
    expect(other.mean).toBeCloseTo(workshop.mean, 12);
    expect(other.mean).toBeLessThan(recipe('tiles').mean);
    expect(other.sd).toBeCloseTo(Math.hypot(workshop.sd, 0.15, 0.2), 12);
    expect(other.sharedSd).toBe(workshop.sd);
    expect(recipe('tiles').sharedSd).toBeLessThan(recipe('tiles').sd);
  });

  it('that lie beyond belief are slips: one among thirty moves hardly anything', () => {
    const good = times(30, (i) => exact(even(i, 30, 0.15)));
    const [before, after] = [learn(good), learn([...good, exact(2)])];
    expect(Math.abs(after.recipe('tiles').mean - before.recipe('tiles').mean)).toBeLessThan(0.02);
    expect(after.spread / before.spread).toBeLessThan(1.1);
  });

  it('are the same learned from what is kept', () => {
    const log = times(40, (i) => between(1.5 + (i % 4) / 4, 2.6 + (i % 3) / 3, { day: 20_000 + i }));
    expect(learnFrom(evidenceOf(log.slice(20), evidenceOf(log.slice(0, 20)))).workshop).toEqual(
      learn(log).workshop,
    );
  });
});
