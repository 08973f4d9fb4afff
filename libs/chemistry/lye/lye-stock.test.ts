import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchForFats, checkRecipe, fatTable, type BatterRecipe } from '#chemistry';
import { anyRecipe } from '../../../tests/support/any-recipe.js';
import { plainRecipe as plain } from '../../../tests/support/plain-recipe.js';

const fats = fatTable([]);

const batchOf = (over: Partial<BatterRecipe>, fatsG = 1000) => {
  const batch = batchForFats({ ...plain, ...over }, fats, fatsG);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return batch.value;
};

const codesOf = (over: Partial<BatterRecipe>): string[] =>
  checkRecipe({ ...plain, ...over }, fats).map(({ code }) => code);

describe('lye from a stock solution', () => {
  /** 142.187 g of NaOH in 430.87 g of 33 % lye (see the batch by hand): 284.374 g of 50 % stock and 146.496 g of water. */
  it('takes the stock that holds the alkali, and the rest of the lye as water', () => {
    const { stock } = batchOf({ lyeStockPercent: 50 });
    expect(stock?.massG).toBeCloseTo(284.374, 2);
    expect(stock?.waterG).toBeCloseTo(430.87 - 284.374, 2);
  });

  it('is the same lye as from flakes: nothing is lost, whatever the recipe', () => {
    fc.assert(
      fc.property(anyRecipe, fc.double({ min: 20, max: 52, noNaN: true }), (recipe, lyeStockPercent) => {
        const batch = batchForFats({ ...recipe, lyeStockPercent }, fats, 1000);
        if (!batch.ok) {
          const codes = batch.issues.map(({ code }) => code);
          expect(codes.every((code) => code.startsWith('lye.stock-'))).toBe(true);
          return;
        }
        const { stock, kohG, lyeG, pureNaohG, batchG } = batch.value;
        expect(Math.abs((stock?.massG ?? NaN) + (stock?.waterG ?? NaN) + kohG - lyeG)).toBeLessThan(
          1e-9 * batchG,
        );
        expect(((stock?.massG ?? NaN) * lyeStockPercent) / 100).toBeCloseTo(pureNaohG, 9);
        expect(stock?.waterG).toBeGreaterThanOrEqual(-1e-6);
        const { stock: _, ...flakes } = batch.value;
        expect(batchForFats(recipe, fats, 1000)).toEqual({ ok: true, value: flakes });
      }),
      { seed: 1 },
    );
  });

  it.each([
    [33, 33, []],
    [33, 32.9, ['lye.stock-too-weak']],
    [40, 38, ['lye.stock-too-weak']],
    [33, 19, ['lye.stock-out-of-range']],
    [33, 53, ['lye.stock-out-of-range']],
  ])('of %d %% can be made from a stock of %d %%: %j', (lyeConcentrationPercent, lyeStockPercent, codes) => {
    expect(codesOf({ lyeConcentrationPercent, lyeStockPercent })).toEqual(codes);
  });

  it('is of sodium hydroxide, which a soap of potash takes none of', () => {
    const potash = { kohSharePercent: 100, kohPurityPercent: 90, lyeStockPercent: 50 };
    expect(codesOf(potash)).toEqual(['lye.stock-without-naoh']);
    expect(codesOf({ ...potash, kohSharePercent: 50 })).toEqual([]);
  });

  it('makes no difference where there is none', () => {
    expect(batchOf({})).not.toHaveProperty('stock');
  });
});
