import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logProbabilityBetween } from './log-probability.js';

fc.configureGlobal({ seed: 1843 });

describe('the logarithm of a normal probability', () => {
  /** Oracle: the distribution function of the @stdlib statistics library, mirrored into its exact tail. */
  it('is that of a statistics library wherever that has digits', () => {
    const bound = fc.integer({ min: -3000, max: 3000 }).map((n) => n / 100);
    fc.assert(
      fc.property(bound, fc.integer({ min: 1, max: 1000 }), (a, hundredths) => {
        const b = a + hundredths / 100;
        const [from, to] = a + b > 0 ? [-b, -a] : [a, b];
        const theirs = Math.log(normalCdf(to, 0, 1) - normalCdf(from, 0, 1));
        expect(logProbabilityBetween(a, b)).toBeCloseTo(theirs, 9);
      }),
    );
  });

  /**
   * Φ(−5) = 2.866515719e-7, Φ(−10) = 7.619853024e-24, and log₁₀ Φ(−50) = −544.96634 (all printed in Abramowitz and
   * Stegun, tables 26.1 and 26.2; from memory).
   */
  it('agrees with printed tables far out', () => {
    expect(logProbabilityBetween(-Infinity, -5)).toBeCloseTo(Math.log(2.866515719e-7), 8);
    expect(logProbabilityBetween(10, Infinity)).toBeCloseTo(Math.log(7.619853024e-24), 8);
    expect(logProbabilityBetween(-Infinity, -50) / Math.LN10).toBeCloseTo(-544.96634, 5);
    expect(logProbabilityBetween(-Infinity, Infinity)).toBe(0);
  });

  it('joins its pieces without a step', () => {
    for (const a of [-90, -35, -3, 0, 3, 35]) {
      // Half a step to either side of the width at which the formula changes; the density hardly does.
      const density = (width: number) =>
        logProbabilityBetween(a - width / 2, a + width / 2) - Math.log(width);
      expect(density(1.0001e-4)).toBeCloseTo(density(0.9999e-4), 8);
    }
    const slope = logProbabilityBetween(-Infinity, -34.999) - logProbabilityBetween(-Infinity, -35.001);
    // d ln Φ / dz at −35 is about 35 + 1/35 (Mills' ratio).
    expect(slope / 0.002).toBeCloseTo(35 + 1 / 35, 3);
  });
});
