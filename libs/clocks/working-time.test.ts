import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile, seededRandom } from '#units';
import { anyInputs } from '../../tests/support/clock-inputs.js';
import { forecast, type Forecast } from './forecast.js';
import { referenceInputs } from './inputs.js';
import type { StateId } from './states.js';
import { stretches, workingTime, type WayOfWorking } from './working-time.js';

fc.configureGlobal({ seed: 1843 });

const at = (state: StateId, medianMin: number, sigma: number): Forecast => ({
  state,
  baseMin: medianMin,
  medianMin,
  batchSigma: sigma,
  ruleSigma: 0,
  recipeSigma: 0,
  sharedSigma: 0,
  sigma,
  reasons: [],
  beyond: [],
});
const pour = (m: number, s: number, n: number, t: number) => ({
  start: at('emulsion', m, s),
  end: at('medium-trace', n, t),
});

const pieces = fc.integer({ min: 1, max: 60 });
const seconds = fc.integer({ min: 1, max: 120 });
const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
/** Ends of which the second mostly, but not always, comes later, and which may vary differently. */
const ends = fc.tuple(hundredths(50, 1000), hundredths(10, 80), hundredths(50, 3000), hundredths(10, 80));

describe('the time to work in', () => {
  /**
   * By hand: from 2 to 9 min with σ 0.5 at both ends is a log-normal of median 7 min. 24 pieces of 15 s take
   * 6 min: Φ(ln(7/6)/0.5) = Φ(0.3083) = 0.6211. In nine batches of ten there are 7·e^(−0.5·1.281552) = 3.688 min,
   * so 14 pieces, and two batches of 12.
   */
  it('follows a worked example', () => {
    const time = workingTime('pour', pour(2, 0.5, 9, 0.5), 15, 24);
    expect(time.chance).toBeCloseTo(0.6211, 4);
    expect(time.stretchMin.likely).toBeCloseTo(7, 12);
    expect(time.stretchMin.low).toBeCloseTo(3.688, 3);
    expect(time).toMatchObject({ piecesSurely: 14, batches: 2 });
  });

  /** Oracle: the log-normal of the @stdlib statistics library, which the stretch is when both ends vary alike. */
  it('is log-normal when both ends vary alike', () => {
    fc.assert(
      fc.property(ends, seconds, pieces, ([m, sigma, more], each, count) => {
        const time = workingTime('pour', pour(m, sigma, m + more, sigma), each, count);
        expect(time.chance).toBeCloseTo(1 - lognormalCdf((each * count) / 60, Math.log(more), sigma), 9);
        expect(time.stretchMin.low / lognormalQuantile(0.1, Math.log(more), sigma)).toBeCloseTo(1, 8);
        expect(time.stretchMin.high / lognormalQuantile(0.9, Math.log(more), sigma)).toBeCloseTo(1, 8);
      }),
    );
  });

  /** Brute force: 40,000 batches drawn with a seed; three standard errors of a share are at most 0.0075. */
  it.each([
    ['both ends varying alike', pour(2, 0.4, 9, 0.4), 15, 24],
    ['the end varying more', pour(4, 0.3, 9, 0.6), 12, 20],
    ['the start varying more', pour(4, 0.7, 9, 0.3), 12, 20],
    ['the start varying much more', pour(8, 0.8, 9, 0.1), 5, 12],
    ['an end that mostly comes first', pour(9, 0.3, 7, 0.5), 10, 6],
  ])('is that of simulated batches with %s', (_, { start, end }, each, count) => {
    const random = seededRandom(1843);
    const stretch = Array.from({ length: 40_000 }, () => {
      const z = normalQuantile(random.next());
      return end.medianMin * Math.exp(end.sigma * z) - start.medianMin * Math.exp(start.sigma * z);
    });
    const share = (least: number) => stretch.filter((length) => length >= least).length / stretch.length;
    const time = workingTime('pour', { start, end }, each, count);
    expect(Math.abs(time.chance - share((each * count) / 60))).toBeLessThan(0.0075);
    const { low, likely, high } = time.stretchMin;
    for (const [length, chance] of [
      [low, 0.9],
      [likely, 0.5],
      [high, 0.1],
    ] as const) {
      if (length > 0) expect(Math.abs(share(length) - chance)).toBeLessThan(0.0075);
      else expect(share(1e-9)).toBeLessThan(chance + 0.0075);
    }
  });

  it('gives a band in order, never below 0, and a chance that falls with the pieces', () => {
    fc.assert(
      fc.property(ends, seconds, pieces, (four, each, count) => {
        const time = workingTime('pour', pour(...four), each, count);
        const { low, likely, high } = time.stretchMin;
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(likely);
        expect(likely).toBeLessThanOrEqual(high);
        const one = workingTime('pour', pour(...four), each, count + 1);
        expect(one.chance).toBeLessThanOrEqual(time.chance);
      }),
    );
  });

  it('promises as many pieces as are nine times in ten in time, and splits into the fewest batches', () => {
    const chance = (four: Parameters<typeof pour>, each: number, count: number) =>
      workingTime('pour', pour(...four), each, count).chance;
    fc.assert(
      fc.property(ends, seconds, pieces, (four, each, count) => {
        const { piecesSurely, batches } = workingTime('pour', pour(...four), each, count);
        expect(chance(four, each, piecesSurely)).toBeGreaterThan(0.9 - 1e-9);
        if (piecesSurely < count) expect(chance(four, each, piecesSurely + 1)).toBeLessThan(0.9 + 1e-9);
        expect(batches).toBeGreaterThanOrEqual(1);
        expect(batches).toBeLessThanOrEqual(count);
        if (piecesSurely === 0) expect(batches).toBe(count);
        else expect(Math.ceil(count / batches)).toBeLessThanOrEqual(piecesSurely);
        if (batches > 1) expect(Math.ceil(count / (batches - 1))).toBeGreaterThan(piecesSurely);
      }),
    );
  });

  it('is always enough for pieces that take none, or for no pieces', () => {
    const never = pour(9, 0.3, 4, 0.3);
    expect(workingTime('pour', never, 0, 24)).toMatchObject({ chance: 1, piecesSurely: 24, batches: 1 });
    expect(workingTime('pour', never, 20, 0)).toMatchObject({ chance: 1, piecesSurely: 0, batches: 0 });
  });

  it('is none where the end comes first', () => {
    expect(workingTime('pour', pour(9, 0.3, 4, 0.3), 1, 24)).toEqual({
      stretchMin: { low: 0, likely: 0, high: 0 },
      chance: 0,
      piecesSurely: 0,
      batches: 24,
    });
  });

  it('is some for every way of working, in any batch that can be', () => {
    const way = fc.constantFrom(...(Object.keys(stretches) as WayOfWorking[]));
    fc.assert(
      fc.property(way, anyInputs, (how, inputs) => {
        const { start, end } = stretches[how];
        const found = { start: forecast(start, inputs), end: forecast(end, inputs) };
        expect(workingTime(how, found, 15, 24).stretchMin.low).toBeGreaterThan(0);
      }),
    );
  });

  it('refuses what it cannot answer', () => {
    const light = forecast('light-trace', referenceInputs);
    const medium = forecast('medium-trace', referenceInputs);
    const dip = (each: number, count: number) =>
      workingTime('dip', { start: light, end: medium }, each, count);
    expect(() => workingTime('pour', { start: light, end: medium }, 15, 24)).toThrow(
      'to pour takes emulsion to medium-trace, not light-trace to medium-trace',
    );
    expect(() => dip(-1, 24)).toThrow(RangeError);
    expect(() => dip(NaN, 24)).toThrow(RangeError);
    expect(() => dip(15, 2.5)).toThrow(RangeError);
    expect(() => dip(15, -1)).toThrow(RangeError);
  });
});
