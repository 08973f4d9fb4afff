import { describe, expect, it } from 'vitest';
import { lossOfWeekFrom, massOn, shareLeft } from './drying-curve.js';

const curve = { freshG: 100, settledG: 88, tauDays: 10, beta: 1 };

// Closed forms of the Weibull distribution: Johnson, Kotz, Balakrishnan, Continuous Univariate Distributions 1
// (1994), chapter 21 (from memory).
describe('a drying curve', () => {
  it('is a plain exponential when β is 1, which loses the same share of the rest each week', () => {
    const week = shareLeft(curve, 7);
    expect(week).toBeCloseTo(Math.exp(-0.7), 14);
    expect(shareLeft(curve, 21)).toBeCloseTo(week ** 3, 14);
    expect(massOn(curve, 10 * Math.LN2)).toBeCloseTo(94, 12);
  });

  it.each([0.5, 0.7, 1])('has lost half at τ (ln 2)^(1/β) and 1 − 1/e at τ, for β = %d', (beta) => {
    expect(shareLeft({ tauDays: 10, beta }, 10 * Math.LN2 ** (1 / beta))).toBeCloseTo(0.5, 14);
    expect(shareLeft({ tauDays: 10, beta }, 10)).toBeCloseTo(Math.exp(-1), 14);
  });

  it('loses in a week what a hand reckons: β ½, τ 7 days, from the start', () => {
    // exp(−1) of 12 g is left after the week: 12 · (1 − 0.367879) = 7.585 g of 100 g.
    expect(lossOfWeekFrom({ ...curve, tauDays: 7, beta: 0.5 }, 0)).toBeCloseTo(0.0758545, 6);
  });

  it('loses in a later week a part of what it weighs by then', () => {
    // β 1, τ 7: 12 · (e⁻¹ − e⁻²) = 12 · 0.232544 = 2.79053 g of 88 + 12 · 0.367879 = 92.41455 g.
    expect(lossOfWeekFrom({ ...curve, tauDays: 7 }, 7)).toBeCloseTo(0.0301958, 6);
  });

  it('starts and ends at its masses', () => {
    expect(massOn(curve, 0)).toBe(100);
    expect(massOn(curve, 1e5)).toBe(88);
  });
});
