import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorAt, outsideOf, type Point } from './factor-at.js';

fc.configureGlobal({ seed: 1843 });

const table: readonly Point[] = [
  [10, 4],
  [20, 2],
  [40, 1],
];

describe('reading a table', () => {
  it('gives the factor of a point exactly', () => {
    // 0.7 + (0.1 − 0.7) is not 0.1 to the last digit, and a factor of 1 counts as no reason only to the last digit.
    for (const points of [
      table,
      [
        [0, 0.7],
        [1, 0.1],
      ] as const,
    ])
      for (const [x, factor] of points) expect(factorAt(points, x)).toBe(factor);
  });

  /** By hand: 15 lies half way from 10 to 20, 25 a quarter of the way from 20 to 40. */
  it('goes straight from point to point', () => {
    expect(factorAt(table, 15)).toBe(3);
    expect(factorAt(table, 25)).toBe(1.75);
  });

  it('holds the last factor beyond either end, and says so', () => {
    expect([factorAt(table, 9), outsideOf(table, 9)]).toEqual([4, 'below']);
    expect([factorAt(table, 41), outsideOf(table, 41)]).toEqual([1, 'above']);
  });

  it('knows its ends as its own', () => {
    for (const x of [10, 25, 40]) expect(outsideOf(table, x)).toBeUndefined();
  });

  it('never turns where the table does not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (a, b) => {
          const [less, more] = a <= b ? [a, b] : [b, a];
          expect(factorAt(table, less)).toBeGreaterThanOrEqual(factorAt(table, more));
        },
      ),
    );
  });

  it('refuses an empty table', () => {
    expect(() => factorAt([], 1)).toThrow(RangeError);
  });
});
