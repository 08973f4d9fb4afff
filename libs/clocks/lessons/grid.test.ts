import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conjugate } from './conjugate.js';
import { evidenceOf } from './evidence.js';
import { gridFor, type Grid } from './grid.js';
import type { Observation } from './observation.js';

fc.configureGlobal({ seed: 1843 });

const prior = { workshopSigma: 0.3, recipeSigma: 0.4 };
/** Eight standard deviations of the sum of both: 8 · 0.5. */
const MARGIN = 4;

const seen = (over: Partial<Observation>): Observation => ({
  ...{ recipe: 'tiles', sigma: 0.25, entries: [] },
  ...over,
});
const gridOf = (observations: Observation[], of = prior): Grid =>
  gridFor([...evidenceOf(observations).values()], of);
/** From where to where the grid reaches, to a step. */
const expectReach = ({ points, step }: Grid, low: number, high: number): void => {
  expect(points[0]).toBeCloseTo(low, 12);
  const last = points.at(-1) ?? NaN;
  expect(last).toBeGreaterThanOrEqual(high - 1e-9);
  expect(last).toBeLessThan(high + step);
};

describe('the grid of offsets', () => {
  it('is even', () => {
    const { points, step } = gridOf([seen({ above: 0.2 })]);
    for (const [i, point] of points.entries()) expect(point).toBeCloseTo(-MARGIN + i * step, 9);
  });

  it.each<[string, Observation[], number, number]>([
    ['nothing', [], 0, 0],
    [
      'exact times, by their weighted mean',
      [seen({ exact: 2, sigma: 0.1 }), seen({ exact: 1, sigma: 0.2 })],
      0,
      1.8,
    ],
    ['an exact time that was early', [seen({ exact: -1 })], -1, 0],
    ['“not yet” long after the forecast', [seen({ above: 1.5 })], 0, 1.5],
    ['“already” long before it', [seen({ below: -1.5 })], -1.5, 0],
    ['bounds on either side of the forecast', [seen({ above: -0.5, below: 0.5 })], 0, 0],
    [
      'recipes that disagree',
      [seen({ recipe: 'a', exact: 0.7 }), seen({ recipe: 'b', below: -2 }), seen({ recipe: 'a', above: 1 })],
      ...([-2, 1] as const),
    ],
  ])(
    'reaches eight deviations beyond 0 and beyond what was drawn away by %s',
    (_, observations, low, high) => {
      expectReach(gridOf(observations), low - MARGIN, high + MARGIN);
    },
  );

  /**
   * What is integrated is no narrower than were it all exact. Given that, the workshop's deviation is that of the closed
   * form, and a recipe's own offset given the workshop's has the precision 1/τ² + Σ 1/σ².
   */
  it('has steps of seven tenths of the narrowest deviation, as if all were known exactly', () => {
    const observation = fc.record({
      recipe: fc.constantFrom('a', 'b', 'c'),
      sigma: fc.integer({ min: 5, max: 60 }).map((n) => n / 100),
      isExact: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(observation, { maxLength: 25 }), (batches) => {
        const log = (exactly: boolean) =>
          batches.map(({ isExact, ...rest }) =>
            seen({ ...rest, ...(exactly || isExact ? { exact: 0 } : { above: -1, below: 1 }) }),
          );
        const { workshop } = conjugate(evidenceOf(log(true)), prior);
        const precisions = ['a', 'b', 'c'].map((key) =>
          batches.reduce((sum, { recipe, sigma }) => (recipe === key ? sum + 1 / sigma ** 2 : sum), 0),
        );
        const recipe =
          batches.length === 0 ? Infinity : 1 / Math.sqrt(1 / 0.4 ** 2 + Math.max(...precisions));
        expect(gridOf(log(false)).step / (0.7 * Math.min(workshop.sd, recipe))).toBeCloseTo(1, 9);
      }),
    );
  });

  it('asks only for the workshop where recipes do not differ', () => {
    const { step, points } = gridOf([seen({ above: 0, sigma: 0.25 })], {
      workshopSigma: 0.3,
      recipeSigma: 0,
    });
    expect(step).toBeCloseTo(0.7 / Math.sqrt(1 / 0.3 ** 2 + 1 / 0.25 ** 2), 12);
    expect(points[0]).toBeCloseTo(-2.4, 12);
  });

  it('is never finer than anyone could need', () => {
    expect(gridOf([seen({ above: 0, sigma: 1e-5 })]).step).toBe(0.0005);
  });
});
