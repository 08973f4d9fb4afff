import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorAt, type Point } from './factor-at.js';

fc.configureGlobal({ seed: 1843 });

const table: readonly Point[] = [
  [10, 4],
  [20, 2],
  [40, 1],
];

describe('reading a table', () => {
  it('gives the factor of a point exactly', () => {
    for (const [x, factor] of table) expect(factorAt(table, x)).toEqual({ factor });
  });

  /** By hand: 15 lies half way from 10 to 20, 25 a quarter of the way from 20 to 40. */
  it('goes straight from point to point', () => {
    expect(factorAt(table, 15)).toEqual({ factor: 3 });
    expect(factorAt(table, 25)).toEqual({ factor: 1.75 });
  });

  it('holds the last factor beyond either end, and says so', () => {
    expect(factorAt(table, 9)).toEqual({ factor: 4, outside: 'below' });
    expect(factorAt(table, 41)).toEqual({ factor: 1, outside: 'above' });
  });

  it('never turns where the table does not', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (a, b) => {
          const [less, more] = a <= b ? [a, b] : [b, a];
          expect(factorAt(table, less).factor).toBeGreaterThanOrEqual(factorAt(table, more).factor);
        },
      ),
    );
  });

  it('refuses an empty table', () => {
    expect(() => factorAt([], 1)).toThrow(RangeError);
  });
});
