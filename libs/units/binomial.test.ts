import binomialCdfOracle from '@stdlib/stats-base-dists-binomial-cdf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialCdf } from '#units';

fc.configureGlobal({ seed: 1713 });

describe('the binomial', () => {
  /** Oracle: @stdlib, through the incomplete beta where ours sums. Relative, so that the tails count. */
  it('has the distribution function of a statistics library, tails included', () => {
    for (const n of [1, 5, 24, 100, 1000, 10_000]) {
      for (const p of [0.001, 0.03, 0.3, 0.5, 0.9, 0.999]) {
        for (let k = 0; k <= n; k += Math.max(1, Math.floor(n / 150))) {
          const theirs = binomialCdfOracle(k, n, p);
          if (theirs > 1e-290) expect(Math.abs(binomialCdf(k, n, p) / theirs - 1)).toBeLessThan(1e-11);
        }
      }
    }
  });

  /** Oracle: the definition, with whole binomial coefficients as big integers. */
  it('is the sum of its terms for small n', () => {
    const n = fc.integer({ min: 1, max: 60 });
    const percent = fc.integer({ min: 1, max: 99 });
    fc.assert(
      fc.property(n, fc.integer({ min: 0, max: 60 }), percent, (trials, k, chance) => {
        let coefficient = 1n;
        let sum = 0n;
        for (let i = 0; i <= Math.min(k, trials); i += 1) {
          sum += coefficient * BigInt(chance) ** BigInt(i) * BigInt(100 - chance) ** BigInt(trials - i);
          coefficient = (coefficient * BigInt(trials - i)) / BigInt(i + 1);
        }
        const exact = Number((sum * 10n ** 40n) / 100n ** BigInt(trials)) / 1e40;
        expect(binomialCdf(k, trials, chance / 100)).toBeCloseTo(exact, 13);
      }),
    );
  });

  it('is mirrored when failures are counted', () => {
    const n = fc.integer({ min: 1, max: 10_000 });
    const share = fc.integer({ min: 0, max: 999 });
    fc.assert(
      fc.property(n, share, fc.integer({ min: 1, max: 999 }), (trials, at, chance) => {
        const k = Math.floor((trials * at) / 1000);
        const failuresAtMost = binomialCdf(trials - k - 1, trials, 1 - chance / 1000);
        expect(binomialCdf(k, trials, chance / 1000) + failuresAtMost).toBeCloseTo(1, 11);
      }),
    );
  });

  it('knows its ends', () => {
    expect(binomialCdf(-0.5, 10, 0.3)).toBe(0);
    expect(binomialCdf(10, 10, 0.3)).toBe(1);
    expect(binomialCdf(3.9, 10, 0.3)).toBe(binomialCdf(3, 10, 0.3));
    expect(binomialCdf(0, 10, 0)).toBe(1);
    expect(binomialCdf(9, 10, 1)).toBe(0);
    expect(binomialCdf(10, 10, 1)).toBe(1);
    expect(binomialCdf(0, 0, 0.5)).toBe(1);
  });

  it('refuses what it is not defined for', () => {
    expect(() => binomialCdf(1, 1.5, 0.5)).toThrow(RangeError);
    expect(() => binomialCdf(1, -1, 0.5)).toThrow(RangeError);
    expect(() => binomialCdf(1, 2, 1.5)).toThrow(RangeError);
    expect(() => binomialCdf(NaN, 2, 0.5)).toThrow(RangeError);
  });
});
