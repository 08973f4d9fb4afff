import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasShares, madeHundred, sumOf } from './shares.js';

describe('shares of fats', () => {
  it('add up without the dust of binary fractions, and without what is no number', () => {
    expect(sumOf([{ percent: 0.1 }, { percent: 0.2 }, { percent: 'x' }, {}])).toBe(0.3);
  });

  it('can be reckoned with once each is told', () => {
    expect(hasShares([{ fat: 'olive', percent: 100 }])).toBe(true);
    expect(
      [[], [{}], [{ fat: 'olive' }], [{ percent: 3 }], [{ fat: 'olive', percent: 'x' }]].map(hasShares),
    ).toEqual([false, false, false, false, false]);
  });

  it('are made 100 alike', () => {
    // 40 + 25 + 15 = 80; each times 100/80
    expect(madeHundred([{ percent: 40 }, { percent: 25 }, { percent: 15 }]).map((s) => s.percent)).toEqual([
      50, 31.3, 18.7,
    ]);
  });

  it('make 100 whatever they were, and stay in order', () => {
    const share = fc.integer({ min: 1, max: 10_000 }).map((n) => ({ percent: n / 100 }));
    fc.assert(
      fc.property(fc.array(share, { minLength: 1, maxLength: 30 }), (shares) => {
        const made = madeHundred(shares);
        expect(sumOf(made)).toBe(100);
        for (const [i, a] of shares.entries()) {
          for (const [j, b] of shares.entries()) {
            if (a.percent > b.percent) expect(made[i]!.percent).toBeGreaterThanOrEqual(made[j]!.percent);
          }
        }
      }),
    );
  });

  it('stay as they are where there are none', () => {
    expect(madeHundred([{ fat: 'olive' }])).toEqual([{ fat: 'olive' }]);
  });
});
