import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Band } from '../engine/quantile.js';
import { lossOfWeekFrom, massOn } from './drying-curve.js';
import { fitCure, type CureFit } from './fit-cure.js';
import { readyDay } from './ready-day.js';
import { usualCureRule, type WeighIn } from './weigh-in.js';

const truth = { freshG: 2400, settledG: 2130, tauDays: 12, beta: 0.7 };
const weighed = (...days: number[]): WeighIn[] =>
  days.map((day) => ({ days: day, massG: massOn(truth, day) }));

describe('fitting the cure', () => {
  it('finds the curve behind weighings without noise', () => {
    const fit = fitted(weighed(...Array.from({ length: 30 }, (_, i) => 3 * i)), { scaleSdG: 0.001 });
    expect(fit.freshG.likely / truth.freshG).toBeCloseTo(1, 3);
    expect(fit.settledG.likely / truth.settledG).toBeCloseTo(1, 3);
    expect(fit.tauDays.likely / truth.tauDays).toBeCloseTo(1, 2);
    expect(fit.beta.likely / truth.beta).toBeCloseTo(1, 2);
    expect(fit.massAt(40).likely / massOn(truth, 40)).toBeCloseTo(1, 4);
  });

  it('moves the day with each weighing, and tightens it', () => {
    const days = [0, 4, 7, 14, 21, 28, 35, 42];
    // A slow lot, so that what is usual has to give way.
    const slow = { ...truth, tauDays: 25, settledG: 2050 };
    const all = days.map((day) => ({ days: day, massG: massOn(slow, day) }));
    const bands = [2, 4, 6, 8].map((n) =>
      readyDay(fitted(all.slice(0, n), { waterShare: 0.2 }), usualCureRule),
    );
    const widths = bands.map(({ low, high }) => high - low);
    const direct = firstDayUnder(slow, 0.01);
    for (const [i, width] of widths.slice(1).entries()) expect(width).toBeLessThan(widths[i] ?? NaN);
    expect(Math.abs((bands[3]?.likely ?? NaN) - direct)).toBeLessThan(
      Math.abs((bands[0]?.likely ?? NaN) - direct),
    );
    expect(new Set(bands.map(({ likely }) => likely)).size).toBe(4);
  });

  it('gives the ready day that a search along each curve finds', () => {
    const fit = fitted(weighed(0, 7, 14));
    const single = (i: number): CureFit => ({
      ...fit,
      curves: fit.curves.slice(i, i + 1).map(({ curve }) => ({ curve, weight: 1 })),
    });
    for (const i of [0, 200, 400, 600, 800]) {
      const curve = fit.curves[i]?.curve ?? truth;
      expect(readyDay(single(i), usualCureRule).likely).toBeCloseTo(firstDayUnder(curve, 0.01), 1);
    }
  });

  it('is ready from the start when the rule allows more than the first week takes', () => {
    expect(readyDay(fitted(weighed(0, 7, 14, 21)), { lossPercentPerWeek: 30 })).toEqual({
      low: 0,
      likely: 0,
      high: 0,
    });
  });

  it.each<[string, WeighIn[]]>([
    ['all equal', [0, 7, 14].map((days) => ({ days, massG: 100 }))],
    ['one day', [3, 3].map((days) => ({ days, massG: 100 }))],
    [
      'one day apart',
      [
        { days: 0, massG: 100 },
        { days: 1, massG: 99 },
      ],
    ],
    [
      'a small gain',
      [
        { days: 0, massG: 100 },
        { days: 9, massG: 102 },
      ],
    ],
    [
      'late only',
      [
        { days: 60, massG: 100 },
        { days: 90, massG: 99.9 },
      ],
    ],
    [
      'far apart',
      [
        { days: 0, massG: 100 },
        { days: 4000, massG: 80 },
      ],
    ],
    ['one outlier', [...weighed(0, 7, 14), { days: 21, massG: 1700 }]],
  ])('gives a band for %s', (_name, weighIns) => {
    const fit = fitted(weighIns);
    for (const band of [fit.freshG, fit.settledG, fit.tauDays, fit.beta, fit.massAt(0), fit.massAt(50)])
      expectBand(band);
    const ready = readyDay(fit, usualCureRule);
    expect(ready.low).toBeGreaterThanOrEqual(0);
    expect(ready.high).toBeGreaterThanOrEqual(ready.low);
    expect(ready.high).toBeLessThan(Infinity);
    expect(fit.curves.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('learns nothing of pace from one day', () => {
    const { tauDays } = fitted([3, 3].map((days) => ({ days, massG: 100 })));
    // The ends of what is usual, which are percentiles of its prior.
    expect(Math.abs(tauDays.low - 6.5)).toBeLessThan(0.7);
    expect(Math.abs(tauDays.high - 30)).toBeLessThan(2.5);
  });

  it.each<[string, WeighIn[], { waterShare?: number; scaleSdG?: number }]>([
    ['cure.too-few-weighings', weighed(0), {}],
    [
      'cure.day-out-of-range',
      [
        { days: -1, massG: 100 },
        { days: 7, massG: 99 },
      ],
      {},
    ],
    [
      'cure.day-out-of-range',
      [
        { days: NaN, massG: 100 },
        { days: 7, massG: 99 },
      ],
      {},
    ],
    [
      'cure.mass-out-of-range',
      [
        { days: 0, massG: 0 },
        { days: 7, massG: 99 },
      ],
      {},
    ],
    [
      'cure.mass-gained',
      [
        { days: 7, massG: 103.1 },
        { days: 0, massG: 100 },
      ],
      {},
    ],
    [
      'cure.lost-more-than-water',
      [
        { days: 0, massG: 100 },
        { days: 30, massG: 76 },
      ],
      { waterShare: 0.2 },
    ],
    ['cure.water-share-out-of-range', weighed(0, 7), { waterShare: 1 }],
    ['cure.scale-out-of-range', weighed(0, 7), { scaleSdG: 0 }],
  ])('refuses with %s', (code, weighIns, options) => {
    const result = fitCure(weighIns, options);
    expect(result.ok ? [] : result.issues.map((issue) => issue.code)).toEqual([code]);
  });
});

describe('laws of the fit', () => {
  const lots = fc.record({
    loss: fc.double({ min: 0.05, max: 0.18, noNaN: true }),
    tau: fc.double({ min: 4, max: 40, noNaN: true }),
    days: fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 4 }),
  });
  const weighInsOf = ({ loss, tau, days }: { loss: number; tau: number; days: number[] }): WeighIn[] =>
    [0, ...days].map((day) => ({
      days: day,
      massG: 100 * (1 - loss * (1 - Math.exp(-((day / tau) ** 0.7)))),
    }));

  it('scaling the masses scales the masses and nothing else', () => {
    fc.assert(
      fc.property(lots, fc.double({ min: 0.01, max: 1000, noNaN: true }), (lot, k) => {
        const one = fitted(weighInsOf(lot), { scaleSdG: 0.3 });
        const other = fitted(
          weighInsOf(lot).map(({ days, massG }) => ({ days, massG: massG * k })),
          { scaleSdG: 0.3 * k },
        );
        expect(other.settledG.high / k).toBeCloseTo(one.settledG.high, 6);
        expect(other.noiseG / k).toBeCloseTo(one.noiseG, 6);
        expect(other.tauDays.low).toBeCloseTo(one.tauDays.low, 6);
        expect(readyDay(other, usualCureRule).likely).toBeCloseTo(readyDay(one, usualCureRule).likely, 2);
      }),
      { numRuns: 10, seed: 11 },
    );
  });

  it('the order of the weighings is nothing, and more loss allowed is an earlier day', () => {
    fc.assert(
      fc.property(lots, fc.double({ min: 0.2, max: 2, noNaN: true }), (lot, percent) => {
        const fit = fitted(weighInsOf(lot));
        const reversed = fitted(weighInsOf(lot).toReversed());
        expect(reversed.tauDays.likely).toBeCloseTo(fit.tauDays.likely, 6);
        const strict = readyDay(fit, { lossPercentPerWeek: percent });
        const lax = readyDay(fit, { lossPercentPerWeek: percent * 1.3 });
        expect(lax.low).toBeLessThanOrEqual(strict.low);
        expect(lax.likely).toBeLessThan(strict.likely);
        expect(lax.high).toBeLessThan(strict.high);
      }),
      { numRuns: 10, seed: 12 },
    );
  });
});

function fitted(weighIns: readonly WeighIn[], options = {}): CureFit {
  const result = fitCure(weighIns, options);
  if (!result.ok) throw new Error(result.issues.map(({ code }) => code).join(' '));
  return result.value;
}

function expectBand({ low, likely, high }: Band): void {
  expect(low).toBeGreaterThan(0);
  expect(likely).toBeGreaterThan(low);
  expect(high).toBeGreaterThan(likely);
  expect(high).toBeLessThan(Infinity);
}

/** Direct search, a hundredth of a day at a time. */
function firstDayUnder(curve: typeof truth, allowed: number): number {
  let day = 0;
  while (lossOfWeekFrom(curve, day) > allowed) day += 0.01;
  return day;
}
