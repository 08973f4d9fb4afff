import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choosePacks, priceOf } from './choose-packs.js';

fc.configureGlobal({ seed: 1 });

const held = (packs: ReturnType<typeof choosePacks>): number =>
  packs.reduce((sum, { size, count }) => sum + size * count, 0);

describe('packs to buy', () => {
  it('are none where nothing is missing or no size is known', () => {
    expect(choosePacks(0, [{ size: 500 }])).toEqual([]);
    expect(choosePacks(-3, [{ size: 500 }])).toEqual([]);
    expect(choosePacks(10, [])).toEqual([]);
  });

  it('are the cheapest that reach', () => {
    const packs = [
      { size: 500, price: 4.8 },
      { size: 1000, price: 8.6 },
    ];
    expect(choosePacks(600, packs)).toEqual([{ size: 1000, price: 8.6, count: 1 }]);
    expect(choosePacks(1200, packs)).toEqual([
      { size: 500, price: 4.8, count: 1 },
      { size: 1000, price: 8.6, count: 1 },
    ]);
  });

  it('leave the least over where a price is missing', () => {
    expect(choosePacks(600, [{ size: 500, price: 1 }, { size: 700 }])).toEqual([{ size: 700, count: 1 }]);
  });

  /** In binary 0.1 + 0.1 + 0.1 is above 0.3 by its last bit, and so is 0.2 + 0.4 above 2 × 0.3. */
  it('do not ask for one more over the last bit of a sum', () => {
    expect(choosePacks(0.1 + 0.2, [{ size: 0.1 }])).toEqual([{ size: 0.1, count: 3 }]);
    expect(choosePacks(0.1 + 0.1 + 0.1, [{ size: 0.3 }])).toEqual([{ size: 0.3, count: 1 }]);
    expect(choosePacks(0.2 + 0.4, [{ size: 0.3 }])).toEqual([{ size: 0.3, count: 2 }]);
  });

  /** Every combination of two sizes, tried by hand. */
  it('are as cheap as any combination of two sizes', () => {
    const pack = fc.record({
      size: fc.integer({ min: 50, max: 1000 }),
      price: fc.integer({ min: 1, max: 50 }),
    });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4000 }), fc.tuple(pack, pack), (missing, [a, b]) => {
        const chosen = choosePacks(missing, [a, b]);
        let cheapest = Infinity;
        for (let i = 0; i <= Math.ceil(missing / a.size); i += 1) {
          for (let j = 0; j <= Math.ceil(missing / b.size); j += 1) {
            if (i * a.size + j * b.size >= missing) cheapest = Math.min(cheapest, i * a.price + j * b.price);
          }
        }
        expect(held(chosen)).toBeGreaterThanOrEqual(missing);
        expect(priceOf(chosen)).toBe(cheapest);
      }),
    );
  });
});
