import normalCdfOracle from '@stdlib/stats-base-dists-normal-cdf';
import studentCdfOracle from '@stdlib/stats-base-dists-t-cdf';
import studentQuantileOracle from '@stdlib/stats-base-dists-t-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studentCdf, studentPdf, studentQuantile } from '#units';

fc.configureGlobal({ seed: 1908 });

const freedoms = [1, 1.5, 2, 3, 5, 10, 11.3, 30, 100, 1000, 5000, 9999, 10_000, 20_000, 1e5, 1e6];
const df = fc.oneof(
  fc.double({ min: 1, max: 60, noNaN: true }),
  fc.double({ min: 60, max: 2e4, noNaN: true }),
);
const t = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 100);
const p = fc.integer({ min: 1, max: 9999 }).map((n) => n / 10_000);

describe('Student’s t', () => {
  /** Oracle: @stdlib. Relative, so that the far tails count; below 1e-290 the oracle itself runs out of digits. */
  it('has the distribution function of a statistics library, tails included', () => {
    for (const nu of freedoms) {
      for (let at = -60; at <= 60; at += 0.37) {
        const theirs = studentCdfOracle(at, nu);
        if (theirs > 1e-290) expect(Math.abs(studentCdf(at, nu) / theirs - 1)).toBeLessThan(2e-12);
      }
    }
  });

  /** Oracle: @stdlib, whose own quantiles are good to 1e-11 next to the middle. */
  it('has the quantiles of a statistics library', () => {
    for (const nu of freedoms.filter((f) => f <= 20_000)) {
      for (const q of [1e-100, 1e-12, 1e-6, 1e-3, 0.05, 0.3, 0.45, 0.5, 0.55, 0.8, 0.95, 0.999, 1 - 1e-9]) {
        const theirs = studentQuantileOracle(q, nu);
        const near = 1e-9 * Math.max(1, Math.abs(theirs));
        expect(Math.abs(studentQuantile(q, nu) - theirs)).toBeLessThan(near);
      }
    }
  });

  /** NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, critical values of Student's t; from memory. */
  it.each([
    [0.95, 1, 6.314],
    [0.975, 5, 2.571],
    [0.9, 10, 1.372],
    [0.975, 10, 2.228],
    [0.99, 30, 2.457],
    [0.95, 100, 1.66],
  ])('has the printed critical value: %d quantile with %d degrees of freedom is %d', (q, nu, printed) => {
    expect(studentQuantile(q, nu)).toBeCloseTo(printed, 3);
  });

  /** Closed forms: Cauchy for one degree of freedom, F = 1/2 + t / (2 √(2 + t²)) for two. */
  it('is the closed form for one and two degrees of freedom', () => {
    fc.assert(
      fc.property(t, (at) => {
        expect(studentCdf(at, 1)).toBeCloseTo(0.5 + Math.atan(at) / Math.PI, 12);
        expect(studentCdf(at, 2)).toBeCloseTo(0.5 + at / (2 * Math.sqrt(2 + at * at)), 12);
      }),
    );
  });

  /** Oracle: the normal of @stdlib; the difference is of the order of 1/ν. */
  it('becomes the normal with many degrees of freedom', () => {
    for (let z = -8; z <= 8; z += 0.25) {
      const theirs = normalCdfOracle(z, 0, 1);
      expect(Math.abs(studentCdf(z, 1e13) / theirs - 1)).toBeLessThan(1e-9);
      expect(Math.abs(studentCdf(z, Infinity) / theirs - 1)).toBeLessThan(1e-12);
    }
    expect(studentQuantile(0.975, Infinity)).toBeCloseTo(1.959963984540054, 12);
  });

  it('has no step where the method changes', () => {
    for (const at of [-30, -5, -1, -0.1, 0.1, 1, 5]) {
      const ratio = studentCdf(at, 10_000 - 1e-9) / studentCdf(at, 10_000);
      expect(Math.abs(ratio - 1)).toBeLessThan(2e-12);
    }
  });

  it('undoes itself, to the tiniest probabilities', () => {
    fc.assert(
      fc.property(p, df, (q, nu) => {
        expect(Math.abs(studentCdf(studentQuantile(q, nu), nu) - q)).toBeLessThan(1e-13);
      }),
    );
    for (const nu of [1, 2, 10, 300, 5e4]) {
      expect(studentCdf(studentQuantile(1e-300, nu), nu) / 1e-300).toBeCloseTo(1, 9);
    }
  });

  /** The density is the slope of the distribution function: central differences of the oracle's. */
  it('has the density that is the slope of a statistics library’s distribution function', () => {
    const h = 1e-4;
    for (const nu of [1, 3.5, 10, 200, 20_000]) {
      for (const at of [-6, -2, -0.5, 0, 1, 3]) {
        const slope = (studentCdfOracle(at + h, nu) - studentCdfOracle(at - h, nu)) / (2 * h);
        expect(studentPdf(at, nu)).toBeCloseTo(slope, 7);
      }
    }
    expect(studentPdf(1, Infinity)).toBeCloseTo(Math.exp(-0.5) / Math.sqrt(2 * Math.PI), 14);
  });

  it('ends where it should', () => {
    expect(studentCdf(0, 7)).toBe(0.5);
    expect(studentCdf(-Infinity, 7)).toBe(0);
    expect(studentCdf(Infinity, 7)).toBe(1);
    expect(studentQuantile(0, 7)).toBe(-Infinity);
    expect(studentQuantile(1, 7)).toBe(Infinity);
    expect(studentQuantile(0.5, 7)).toBeCloseTo(0, 15);
  });

  it('refuses what it is not defined for', () => {
    expect(() => studentCdf(1, 0.9)).toThrow(RangeError);
    expect(() => studentCdf(NaN, 5)).toThrow(RangeError);
    expect(() => studentPdf(NaN, 5)).toThrow(RangeError);
    expect(() => studentPdf(1, NaN)).toThrow(RangeError);
    expect(() => studentQuantile(1.1, 5)).toThrow(RangeError);
    expect(() => studentQuantile(0.5, -1)).toThrow(RangeError);
  });
});
