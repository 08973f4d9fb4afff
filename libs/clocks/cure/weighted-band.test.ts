import { expect, it } from 'vitest';
import { weightedBand } from './weighted-band.js';

const curveOf = (tauDays: number, weight: number) => ({
  curve: { freshG: 100, settledG: 90, tauDays, beta: 1 },
  weight,
});
const bandOf = (...weighted: [tau: number, weight: number][]) =>
  weightedBand(
    weighted.map(([tau, weight]) => curveOf(tau, weight)),
    ({ tauDays }) => tauDays,
  );

/** Each value stands at the middle of its weight: 10 at 0.2 and 20 at 0.7, so that 0.5 is three fifths of the way. */
it('gives the percentiles of weighted values, straight between their middles', () => {
  const { low, likely, high } = bandOf([10, 0.4], [20, 0.6]);
  expect([low, high]).toEqual([10, 20]);
  expect(likely).toBeCloseTo(16, 12);
});

it('takes values in any order, and one that several curves share once, with all their weight', () => {
  const apart = bandOf([30, 0.25], [10, 0.25], [20, 0.2], [20, 0.3]);
  expect(apart).toEqual({ low: 10, likely: 20, high: 30 });
});

it('is refused for no curves at all', () => {
  expect(() => bandOf()).toThrow(RangeError);
});
