import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { band, quantile, quantiles } from './quantile.js';

fc.configureGlobal({ seed: 1843 });

const time = fc.record({
  medianMin: fc.double({ min: 1, max: 1e6, noNaN: true }),
  sigma: fc.double({ min: 0.1, max: 1.5, noNaN: true }),
});
// Whole numbers spread evenly; doubles would nearly all lie next to 0.
const p = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);
const orCertain = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
const z = fc.integer({ min: -2500, max: 2500 }).map((n) => n / 100);

describe('quantiles of a time', () => {
  /** Oracle: the log-normal quantile of the @stdlib statistics library. */
  it('are those of a statistics library', () => {
    fc.assert(
      fc.property(time, p, (f, q) => {
        const theirs = lognormalQuantile(q, Math.log(f.medianMin), f.sigma);
        expect(quantile(f, q) / theirs).toBeCloseTo(1, 9);
      }),
    );
  });

  /** Oracle: the definition of a truncated distribution, with the distribution function of @stdlib. */
  it('are those of the truncated log-normal once something was seen', () => {
    fc.assert(
      fc.property(time, p, z, fc.double({ min: 0.01, max: 4, noNaN: true }), (f, q, above, width) => {
        const cdf = (at: number): number => lognormalCdf(Math.exp(at), 0, 1);
        const below = above + width;
        const at = Math.log(quantile(f, q, { above, below }) / f.medianMin) / f.sigma;
        // Mirrored where the upper tail would leave the oracle no digits.
        const [from, to, x] = above > 0 ? [-below, -above, -at] : [above, below, at];
        const share = (cdf(x) - cdf(from)) / (cdf(to) - cdf(from));
        expect(above > 0 ? 1 - share : share).toBeCloseTo(q, 6);
      }),
    );
  });

  /**
   * For a log-normal of median 60 h and σ 0.25, not firm at 60 h: what is left is the upper half, whose median is
   * the 75th percentile, z = 0.674490 (a table of the normal distribution): 60 · e^0.1686225 = 71.02 h.
   */
  it('follow a worked example', () => {
    expect(quantile({ medianMin: 3600, sigma: 0.25 }, 0.5, { above: 0 }) / 60).toBeCloseTo(71.02, 2);
  });

  it('rise with the probability and lie between the bounds', () => {
    fc.assert(
      fc.property(
        time,
        orCertain,
        orCertain,
        z,
        fc.double({ min: 1e-12, max: 9, noNaN: true }),
        (f, q, r, above, width) => {
          const seen = { above, below: above + width };
          const [low, high] = [quantile(f, Math.min(q, r), seen), quantile(f, Math.max(q, r), seen)];
          expect(low).toBeLessThanOrEqual(high);
          expect(low).toBeGreaterThanOrEqual(f.medianMin * Math.exp(f.sigma * above));
          expect(high).toBeLessThanOrEqual(f.medianMin * Math.exp(f.sigma * seen.below));
        },
      ),
    );
  });

  it('never fall when “not yet” is heard, nor rise when “already” is', () => {
    const bound = fc.integer({ min: -4500, max: 4500 }).map((n) => n / 100);
    fc.assert(
      fc.property(time, p, bound, bound, (f, q, a, b) => {
        const [less, more] = a <= b ? [a, b] : [b, a];
        const slack = 1 + 1e-9;
        expect(quantile(f, q, { above: less }) * slack).toBeGreaterThanOrEqual(quantile(f, q));
        expect(quantile(f, q, { above: more }) * slack).toBeGreaterThanOrEqual(
          quantile(f, q, { above: less }),
        );
        expect(quantile(f, q, { below: less })).toBeLessThanOrEqual(quantile(f, q, { below: more }) * slack);
      }),
    );
  });

  /** Mills’ ratio far out: beyond z = 40 the excess is nearly exponential with mean 1/40, so its median is ln 2 / 40. */
  it('stay finite where the tail has no digits left', () => {
    const excess = Math.log(quantile({ medianMin: 1, sigma: 1 }, 0.5, { above: 40 })) - 40;
    expect(excess * 40).toBeCloseTo(Math.LN2, 2);
    const lack = Math.log(quantile({ medianMin: 1, sigma: 1 }, 0.5, { below: -40 })) + 40;
    expect(lack * 40).toBeCloseTo(-Math.LN2, 2);
    const between = Math.log(quantile({ medianMin: 1, sigma: 1 }, 1, { above: 40, below: 40.01 }));
    expect(between).toBeCloseTo(40.01, 9);
  });

  /** An exponential of mean 1/40 cut off at 2/40 has its median at −ln(1 − (1 − e⁻²)/2)/40 = 0.5662/40. */
  it('are those of a cut exponential between two bounds that far out', () => {
    const lack = Math.log(quantile({ medianMin: 1, sigma: 1 }, 0.5, { above: -40.05, below: -40 })) + 40;
    expect(lack * 40).toBeCloseTo(-0.5662, 2);
  });

  it('end at the bounds', () => {
    const f = { medianMin: 100, sigma: 0.3 };
    expect(quantile(f, 0)).toBe(0);
    expect(quantile(f, 1)).toBe(Infinity);
    expect(quantile(f, 0, { above: 1 })).toBeCloseTo(100 * Math.exp(0.3), 9);
    expect(quantile(f, 1, { below: 1 })).toBeCloseTo(100 * Math.exp(0.3), 9);
  });

  it('refuse what is no probability and bounds without room', () => {
    const f = { medianMin: 100, sigma: 0.3 };
    for (const p of [1.1, -0.1, NaN]) expect(() => quantile(f, p)).toThrow(RangeError);
    expect(() => quantile(f, 0.5, { above: 1, below: 1 })).toThrow(RangeError);
  });

  /** Oracle: the distribution function of @stdlib. Each of equally likely times is the middle of its share. */
  it('stand for equal shares where they are to be counted', () => {
    fc.assert(
      fc.property(time, fc.integer({ min: 1, max: 40 }), (f, count) => {
        const times = quantiles(f, count);
        expect(times).toHaveLength(count);
        times.forEach((at, k) => {
          expect(lognormalCdf(at, Math.log(f.medianMin), f.sigma) * count).toBeCloseTo(k + 0.5, 6);
        });
      }),
    );
  });
});

describe('a band', () => {
  it('has the median as its likely value, to the last digit', () => {
    fc.assert(
      fc.property(time, (f) => {
        expect(band(f).likely).toBe(f.medianMin);
      }),
    );
  });

  /** z of the 90th percentile is 1.281552 (a table of the normal distribution). */
  it('reaches from the 10th to the 90th percentile', () => {
    const { low, high } = band({ medianMin: 60, sigma: 0.25 });
    expect(low).toBeCloseTo(60 * Math.exp(-0.25 * 1.281552), 4);
    expect(high).toBeCloseTo(60 * Math.exp(0.25 * 1.281552), 4);
  });
});
