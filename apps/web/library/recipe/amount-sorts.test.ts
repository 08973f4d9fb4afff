import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gramsOf, sortOf, told } from './amount-sorts.js';
import { hasShares, sumOf } from './shares.js';

fc.configureGlobal({ seed: 1 });

describe('amounts of fats', () => {
  it('are shares until one is told in grams', () => {
    expect(sortOf([])).toBe('percent');
    expect(sortOf([{ fat: 'olive', percent: 60 }, {}])).toBe('percent');
    expect(sortOf([{}, { fat: 'olive', grams: '' }])).toBe('grams');
  });

  it('become weights of a kilogram, or of what is given', () => {
    const shares = [{ fat: 'olive', percent: 60 }, { fat: 'coconut', percent: 40 }, {}];
    expect(told(shares, 'grams')).toEqual([
      { fat: 'olive', grams: 600 },
      { fat: 'coconut', grams: 400 },
      { grams: '' },
    ]);
    expect(gramsOf(told(shares, 'grams', 850))).toBe(850);
  });

  it('become shares of their sum', () => {
    expect(
      told([{ fat: 'olive', grams: 500 }, { fat: 'coconut', grams: 300 }, { grams: '' }], 'percent'),
    ).toEqual([{ fat: 'olive', percent: 62.5 }, { fat: 'coconut', percent: 37.5 }, {}]);
  });

  it('can be reckoned with in either sort', () => {
    expect(hasShares([{ fat: 'olive', grams: 500 }])).toBe(true);
    expect(hasShares([{ fat: 'olive', grams: '' }])).toBe(false);
    expect(
      hasShares([
        { fat: 'olive', grams: 5 },
        { fat: 'palm', percent: 5 },
      ]),
    ).toBe(false);
  });

  it('come back as they were, to a tenth', () => {
    const tenths = fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(tenths, (weights) => {
        const fats = weights.map((weight, i) => ({ fat: String(i), grams: weight * 10 }));
        const shares = told(fats, 'percent');
        expect(sumOf(shares)).toBe(100);
        const back = told(shares, 'grams', gramsOf(fats));
        back.forEach((each, i) => {
          expect(Math.abs(Number(each.grams) - (fats[i]?.grams ?? 0))).toBeLessThan(
            0.001 * gramsOf(fats) + 0.1,
          );
        });
      }),
    );
  });
});
