import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lossOfWeekFrom, type DryingCurve } from './drying-curve.js';
import type { CureFit } from './fit-cure.js';
import { readyDay } from './ready-day.js';

fc.configureGlobal({ seed: 1843 });

const fitOf = (...curves: DryingCurve[]): CureFit => {
  const band = { low: 0, likely: 0, high: 0 };
  return {
    ...{ freshG: band, settledG: band, tauDays: band, beta: band, noiseG: 0, weighIns: 2 },
    curves: curves.map((curve) => ({ curve, weight: 1 / curves.length })),
    massAt: () => band,
  };
};
const anyCurve = fc
  .tuple(fc.integer({ min: 5, max: 35 }), fc.integer({ min: 2, max: 400 }), fc.integer({ min: 30, max: 100 }))
  .map(([lost, tauDays, hundredths]) => ({
    ...{ freshG: 100, settledG: 100 - lost, tauDays, beta: hundredths / 100 },
  }));

describe('the day on which a lot is cured by weight', () => {
  /**
   * A plain exponential, τ 10 days, from 100 g to 88 g. On day t it weighs 88 + 12 x g, x = e^(−t/10), and loses
   * 12 x (1 − e^(−0.7)) = 6.04098 x in the week: 1 % of its mass at x = 0.88 / (6.04098 − 0.12) = 0.148624, t = 19.0634.
   */
  it('follows a worked example', () => {
    const curve = { freshG: 100, settledG: 88, tauDays: 10, beta: 1 };
    expect(readyDay(fitOf(curve), { lossPercentPerWeek: 1 }).likely).toBeCloseTo(19.0634, 3);
  });

  /** Oracle: the loss over the week from that day, which falls steadily. */
  it('is where the loss over the coming week crosses the rule, be that in days or years', () => {
    fc.assert(
      fc.property(anyCurve, fc.integer({ min: 1, max: 60 }), (curve, tenths) => {
        const allowed = tenths / 1000;
        const day = readyDay(fitOf(curve), { lossPercentPerWeek: tenths / 10 }).likely;
        if (day === 0) expect(lossOfWeekFrom(curve, 0)).toBeLessThanOrEqual(allowed);
        else expect(lossOfWeekFrom(curve, Math.max(0, day - 1e-3))).toBeGreaterThan(allowed);
        expect(lossOfWeekFrom(curve, day + 1e-3)).toBeLessThanOrEqual(allowed);
      }),
    );
  });

  it('is the first for a lot that loses just what is allowed', () => {
    const curve = { freshG: 100, settledG: 90, tauDays: 30, beta: 1 };
    const percent = 100 * lossOfWeekFrom(curve, 0);
    expect(readyDay(fitOf(curve), { lossPercentPerWeek: percent }).likely).toBe(0);
  });

  it('spreads as the curves do that the weighings allow', () => {
    const slow = { freshG: 100, settledG: 88, tauDays: 20, beta: 1 };
    const quick = { freshG: 100, settledG: 88, tauDays: 10, beta: 1 };
    const rule = { lossPercentPerWeek: 1 };
    const [one, other] = [readyDay(fitOf(quick), rule).likely, readyDay(fitOf(slow), rule).likely];
    expect(readyDay(fitOf(slow, quick), rule)).toMatchObject({ low: one, high: other });
  });

  it.each([0, -1, 100, 250, NaN])('is refused for a rule of %d %% a week', (lossPercentPerWeek) => {
    const curve = { freshG: 100, settledG: 88, tauDays: 10, beta: 1 };
    expect(() => readyDay(fitOf(curve), { lossPercentPerWeek })).toThrow(RangeError);
  });
});
