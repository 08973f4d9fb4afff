import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  batchForFats,
  batterOf,
  checkRecipe,
  fatTable,
  liquidTable,
  shippedLiquids,
  type BatchAmounts,
  type BatterRecipe,
  type LiquidShare,
  type WrittenRecipe,
} from '#chemistry';
import { anyRecipe, weighedTogether } from '../../../tests/support/any-recipe.js';
import { plainRecipe } from '../../../tests/support/plain-recipe.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

function batchOf(recipe: BatterRecipe, fatsG = 1000): BatchAmounts {
  const batch = batchForFats(recipe, fats, fatsG);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return batch.value;
}

function codesOf(recipe: WrittenRecipe): string[] {
  return checkRecipe(recipe, fats).map(({ code }) => code);
}

/** Up to three liquids of the table or of their own figures, in the lye or the batter, that come to at most all liquid. */
const anyLiquids: fc.Arbitrary<LiquidShare[]> = fc
  .uniqueArray(
    fc.record({
      liquid: fc.constantFrom(...shippedLiquids.map(({ key }) => key)),
      weight: fc.integer({ min: 1, max: 100 }),
      addedTo: fc.constantFrom('lye' as const, 'batter' as const),
    }),
    { minLength: 1, maxLength: 3, selector: ({ liquid }) => liquid },
  )
  .chain((each) =>
    fc.integer({ min: 1, max: 100 }).map((water) => {
      const all = each.reduce((sum, { weight }) => sum + weight, water);
      return each.map(({ weight, ...rest }) => ({ ...rest, percentOfLiquid: (100 * weight) / all }));
    }),
  );

const sound = fc
  .record({ recipe: anyRecipe, liquids: anyLiquids })
  .map(({ recipe, liquids }) => ({ ...recipe, liquids }))
  .filter((recipe) => checkRecipe(recipe, fats).length === 0);

describe('liquids in place of water', () => {
  it('keep the mass: all that is weighed is the batch', () => {
    fc.assert(
      fc.property(sound, fc.double({ min: 1, max: 100_000, noNaN: true }), (recipe, fatsG) => {
        const batch = batchOf(recipe, fatsG);
        expect(weighedTogether(batch) / batch.batchG).toBeCloseTo(1, 9);
      }),
    );
  });

  it('keep the lye as strong as it is written, their water counted', () => {
    fc.assert(
      fc.property(sound, (recipe) => {
        const batch = batchOf(recipe);
        const pure = batch.pureNaohG + batch.pureKohG;
        const water = batch.liquids.reduce((sum, { waterG }) => sum + waterG, batch.waterG);
        const lye = batch.naohG + batch.kohG + water;
        expect((100 * pure) / lye / recipe.lyeConcentrationPercent).toBeCloseTo(1, 9);
        expect(batch.water.lyeConcentrationPercent / recipe.lyeConcentrationPercent).toBeCloseTo(1, 9);
      }),
    );
  });

  it('have the shares of all liquid that the recipe gives', () => {
    fc.assert(
      fc.property(sound, (recipe) => {
        const { liquids, waterG } = batchOf(recipe);
        const all = liquids.reduce((sum, { massG }) => sum + massG, waterG);
        for (const [i, { massG }] of liquids.entries()) {
          expect((100 * massG) / all).toBeCloseTo(recipe.liquids[i]?.percentOfLiquid ?? NaN, 6);
        }
      }),
    );
  });

  /** Counted in milliequivalents, another way than the code's. */
  it('are neutralised exactly: the alkali beyond that of the same recipe without them is that of their acid', () => {
    const protons = {
      'lactic-acid': 1,
      'acetic-acid': 1,
      'citric-acid': 3,
      'malic-acid': 2,
      'tartaric-acid': 2,
    };
    const molar = {
      'lactic-acid': 90.078,
      'acetic-acid': 60.052,
      'citric-acid': 192.123,
      'malic-acid': 134.087,
      'tartaric-acid': 150.086,
    };
    fc.assert(
      fc.property(sound, (recipe) => {
        const batch = batchOf(recipe);
        const dry = batchOf({ ...recipe, liquids: [] });
        const beyond = (batch.pureNaohG - dry.pureNaohG) / 39.997 + (batch.pureKohG - dry.pureKohG) / 56.105;
        const milliequivalents = batch.liquids.reduce((sum, { key, massG }) => {
          const acid = liquidTable.get(key)?.figures.acid;
          if (acid === undefined) return sum;
          return sum + (massG * acid.grams * 10 * protons[acid.acid]) / molar[acid.acid];
        }, 0);
        expect(1000 * beyond).toBeCloseTo(milliequivalents, 2);
      }),
    );
  });

  it('come to the same whichever way the water is told', () => {
    fc.assert(
      fc.property(sound, (recipe) => {
        const batch = batchOf(recipe);
        const { lyeConcentrationPercent: _, ...rest } = recipe;
        for (const water of [
          { waterPerLye: batch.water.waterPerLye },
          { waterPercentOfFats: batch.water.waterPercentOfFats },
        ]) {
          const other = batchOf(batterOf({ ...rest, ...water }, fats));
          expect(other.naohG).toBeCloseTo(batch.naohG, 6);
          expect(other.waterG).toBeCloseTo(batch.waterG, 6);
          other.liquids.forEach(({ massG }, i) => {
            expect(massG).toBeCloseTo(batch.liquids[i]?.massG ?? NaN, 6);
          });
        }
      }),
    );
  });

  it('grow with fats that are in grams where they are in grams, too', () => {
    const inGrams = {
      ...plainRecipe,
      fats: [
        { fat: 'coconut', grams: 150 },
        { fat: 'olive', grams: 350 },
      ],
      liquids: [{ liquid: 'goat-milk', grams: 60 }],
    };
    expect(batchOf(inGrams, 500).liquids[0]?.massG).toBeCloseTo(60, 9);
    expect(batchOf(inGrams, 1250).liquids[0]?.massG).toBeCloseTo(150, 9);
  });
});

describe('liquids that cannot be used', () => {
  const withLiquids = (...liquids: LiquidShare[]): WrittenRecipe => ({ ...plainRecipe, liquids });

  it('are named with those most like them', () => {
    const [issue] = checkRecipe(withLiquids({ liquid: 'gaot-milk', percentOfLiquid: 50 }), fats);
    expect(issue).toMatchObject({ code: 'recipe.unknown-liquid', path: ['liquids', 0, 'liquid'] });
    expect(issue?.code === 'recipe.unknown-liquid' && issue.nearest[0]).toBe('goat-milk');
    const [german] = checkRecipe(withLiquids({ liquid: 'ziegenmilch', percentOfLiquid: 50 }), fats);
    expect(german?.code === 'recipe.unknown-liquid' && german.nearest[0]).toBe('goat-milk');
  });

  it.each<[string, LiquidShare[]]>([
    ['recipe.liquid-amount-unclear', [{ liquid: 'tea' }]],
    ['recipe.liquid-amount-unclear', [{ liquid: 'tea', percentOfLiquid: 10, grams: 10 }]],
    ['recipe.liquid-amount-unclear', [{ liquid: 'tea', grams: 10 }]],
    ['recipe.liquid-share-out-of-range', [{ liquid: 'tea', percentOfLiquid: 0 }]],
    ['recipe.liquid-share-out-of-range', [{ liquid: 'tea', percentOfLiquid: NaN }]],
    [
      'recipe.liquid-twice',
      [
        { liquid: 'tea', percentOfLiquid: 10 },
        { liquid: 'tea', percentOfLiquid: 20 },
      ],
    ],
    [
      'recipe.liquids-over-100',
      [
        { liquid: 'tea', percentOfLiquid: 60 },
        { liquid: 'beer', percentOfLiquid: 50 },
      ],
    ],
    [
      'recipe.liquid-figures-over-100',
      [{ liquid: 'own', percentOfLiquid: 5, own: { title: 'Own', waterPercent: 80, sugarPercent: 30 } }],
    ],
    [
      'recipe.liquid-figures-over-100',
      [{ liquid: 'own', percentOfLiquid: 5, own: { title: 'Own', fatPercent: 70, sugarPercent: 30 } }],
    ],
    [
      'recipe.liquids-too-sour',
      [
        {
          liquid: 'own',
          percentOfLiquid: 100,
          own: { title: 'Glacial', acid: { acid: 'acetic-acid', percent: 90 } },
        },
      ],
    ],
  ])('%s', (code, liquids) => {
    expect(codesOf(withLiquids(...liquids))).toEqual([code]);
  });

  it('may be the same in the lye and in the batter, and thirds may miss the whole by a rounding', () => {
    const both = withLiquids(
      { liquid: 'goat-milk', percentOfLiquid: 30, addedTo: 'lye' },
      { liquid: 'goat-milk', percentOfLiquid: 30, addedTo: 'batter' },
    );
    expect(codesOf(both)).toEqual([]);
    const third = { percentOfLiquid: 100 / 3 };
    const thirds = withLiquids(
      { liquid: 'tea', ...third },
      { liquid: 'beer', ...third },
      { liquid: 'coffee', ...third },
    );
    expect(codesOf(thirds)).toEqual([]);
    expect(batchOf({ ...plainRecipe, liquids: thirds.liquids }).waterG).toBeCloseTo(0, 9);
  });

  it('leave at least as much water as lye to dissolve it in', () => {
    // Lye of 33 % has 67 g of water to 33 g of lye: the batter may take half of the water, and a little more.
    const inBatter = (percentOfLiquid: number, addedTo: 'lye' | 'batter' = 'batter') =>
      withLiquids({ liquid: 'tea', percentOfLiquid, addedTo });
    expect(codesOf(inBatter(50))).toEqual([]);
    const [issue] = checkRecipe(inBatter(51.5), fats);
    expect(issue).toMatchObject({ code: 'recipe.lye-not-dissolved', path: ['liquids'] });
    if (issue?.code !== 'recipe.lye-not-dissolved') throw new Error('another issue');
    expect(issue.waterG).toBeLessThan(issue.lyeG);
    expect(issue.waterG / issue.lyeG).toBeGreaterThan(0.95);
    expect(codesOf(inBatter(100, 'lye'))).toEqual([]);
  });

  it('that hold more water than the recipe asks for are refused with both figures', () => {
    const grams = {
      ...plainRecipe,
      fats: [{ fat: 'olive', grams: 500 }],
      liquids: [{ liquid: 'tea', grams: 200 }],
    };
    const [issue] = checkRecipe(grams, fats);
    if (issue?.code !== 'recipe.liquids-over-water') throw new Error(JSON.stringify(issue));
    // 200 g of tea with 99.7 % of water on 500 g of fats; olive oil takes 12.8 % of NaOH, lye of 33 % twice that of water.
    expect(issue.broughtG).toBeCloseTo(39.88, 2);
    expect(issue.askedG).toBeCloseTo(26, 0);
  });

  it('leave a stock solution its water', () => {
    const stock = (percentOfLiquid: number) => ({
      ...withLiquids({ liquid: 'goat-milk', percentOfLiquid, addedTo: 'batter' }),
      lyeStockPercent: 50,
    });
    expect(codesOf(stock(50))).toEqual([]);
    expect(codesOf(stock(60))).toEqual(['lye.stock-leaves-no-liquids']);
  });
});
