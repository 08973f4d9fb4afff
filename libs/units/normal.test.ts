import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalQuantile } from '#units';

describe('the standard normal', () => {
  /** Oracle: the log-normal of the @stdlib statistics library, of which ln is standard normal. */
  it('has the distribution function of a statistics library', () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        const theirs = lognormalCdf(Math.exp(z), 0, 1);
        expect(normalCdf(z) / theirs).toBeCloseTo(1, 10);
      }),
    );
  });

  it('has the quantiles of a statistics library', () => {
    for (const p of [0.0001, 0.01, 0.1, 0.25, 0.5, 0.8, 0.9, 0.99, 0.9999]) {
      expect(normalQuantile(p)).toBeCloseTo(Math.log(lognormalQuantile(p, 0, 1)), 9);
    }
  });

  it('undoes itself', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), (p) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 10);
      }),
    );
  });

  it('refuses what is no probability', () => {
    expect(() => normalQuantile(1.2)).toThrow(RangeError);
  });
});
