import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, lastDeviation, solveLower, solveUpper } from './small-matrix.js';

fc.configureGlobal({ seed: 1843 });

const tenths = fc.integer({ min: -30, max: 30 }).map((n) => n / 10);
/** Any lower triangle with a diagonal well above 0 belongs to a positive definite matrix. */
const anyLower = fc
  .integer({ min: 1, max: 4 })
  .chain((size) =>
    fc.tuple(
      ...Array.from({ length: size }, (_, i) =>
        fc
          .tuple(fc.array(tenths, { minLength: i, maxLength: i }), fc.integer({ min: 5, max: 30 }))
          .map(([before, last]) => [...before, last / 10]),
      ),
    ),
  );
const anyRight = fc.array(tenths, { minLength: 4, maxLength: 4 });

/** L Lᵀ, by the definition. */
const product = (lower: readonly (readonly number[])[]): number[][] =>
  lower.map((row) => lower.map((other) => row.reduce((sum, value, k) => sum + value * (other[k] ?? 0), 0)));

describe('the triangle of a positive definite matrix', () => {
  /** By hand: 2² = 4, 2 · 6 = 12, 6² + 1² = 37, −8 · 2 = −16, −8 · 6 + 5 · 1 = −43, 8² + 5² + 3² = 98. */
  it('follows a worked example', () => {
    const matrix = [
      [4, 12, -16],
      [12, 37, -43],
      [-16, -43, 98],
    ];
    expect(cholesky(matrix)).toEqual([[2], [6, 1], [-8, 5, 3]]);
  });

  it('is found again from its product', () => {
    fc.assert(
      fc.property(anyLower, (lower) => {
        const found = cholesky(product(lower));
        for (const [i, row] of lower.entries())
          for (const [j, value] of row.entries()) expect(found[i]?.[j]).toBeCloseTo(value, 6);
      }),
    );
  });

  it.each<[string, number[][]]>([
    [
      'a direction that is free',
      [
        [1, 1],
        [1, 1],
      ],
    ],
    [
      'a direction that bends the other way',
      [
        [1, 2],
        [2, 1],
      ],
    ],
    ['no number', [[NaN]]],
  ])('is refused for a matrix with %s', (_, matrix) => {
    expect(() => cholesky(matrix)).toThrow(RangeError);
  });
});

describe('solving by the triangle', () => {
  it('gives what the triangle, and its mirror image, take to the right side', () => {
    fc.assert(
      fc.property(anyLower, anyRight, (lower, right) => {
        const [x, y] = [solveLower(lower, right), solveUpper(lower, right)];
        expect([x.length, y.length]).toEqual([lower.length, lower.length]);
        for (const i of lower.keys()) {
          const along = lower[i]?.reduce((sum, value, k) => sum + value * (x[k] ?? NaN), 0);
          const across = lower.reduce((sum, row, k) => sum + (row[i] ?? 0) * (y[k] ?? NaN), 0);
          expect(along).toBeCloseTo(right[i] ?? NaN, 6);
          expect(across).toBeCloseTo(right[i] ?? NaN, 6);
        }
      }),
    );
  });

  /** The last unknown’s variance is the last entry of the inverse, which solving for the last unit vector gives. */
  it('gives the last deviation, as the inverse does', () => {
    fc.assert(
      fc.property(anyLower, (lower) => {
        const unit = lower.map((_, i) => (i === lower.length - 1 ? 1 : 0));
        const inverse = solveUpper(lower, solveLower(lower, unit)).at(-1) ?? NaN;
        expect(lastDeviation(lower) / Math.sqrt(inverse)).toBeCloseTo(1, 9);
      }),
    );
  });
});
