import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import { describe, expect, it } from 'vitest';
import { lengthAt, type Length } from '#planner';
import { truncatedQuantile } from './length.js';

const set: Length = { kind: 'uncertain', median: 3300, sigma: 0.29, draw: 'set' };

describe('lengthAt', () => {
  it('leaves a known length alone', () => {
    expect(lengthAt({ kind: 'known', minutes: 35 }, 0.9, 'at-most', {})).toBe(35);
  });

  /** Oracle: quantiles of the log-normal in @stdlib. */
  it.each([0.5, 0.7, 0.9, 0.99])(
    'takes the quantile of a log-normal on the careful side, at %d',
    (certainty) => {
      const theirs = (p: number): number => lognormalQuantile(p, Math.log(3300), 0.29);
      expect(lengthAt(set, certainty, 'at-least', {})).toBe(Math.ceil(+theirs(certainty).toFixed(6)));
      expect(lengthAt(set, certainty, 'at-most', {})).toBe(Math.floor(+theirs(1 - certainty).toFixed(6)));
    },
  );

  /** Oracle: the distribution function in @stdlib, cut to what was observed and scaled up again. */
  it.each([
    [0.4, Infinity],
    [-Infinity, -1],
    [-0.5, 1.5],
    [3, 3.5],
  ])('keeps to what was observed: draw between %d and %d', (above, below) => {
    const cdf = (z: number): number => lognormalCdf(Math.exp(z), 0, 1);
    for (const p of [0.05, 0.5, 0.95]) {
      const z = truncatedQuantile(p, above, below);
      expect((cdf(z) - cdf(above)) / (cdf(below) - cdf(above))).toBeCloseTo(p, 9);
    }
  });

  /** 8 standard deviations out, Φ differs from 1 by 6e-16: only the other tail still has digits. */
  it('stays within bounds far out', () => {
    const z = truncatedQuantile(0.5, 8, Infinity);
    expect(z).toBeGreaterThan(8);
    expect(z).toBeLessThan(8.2);
  });
});
