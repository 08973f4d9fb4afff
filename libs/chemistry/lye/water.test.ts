import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  batchForFats,
  batterOf,
  checkRecipe,
  effectiveLyePercent,
  fatTable,
  type BatterRecipe,
} from '#chemistry';
import { anyRecipe } from '../../../tests/support/any-recipe.js';
import { plainRecipe as plain } from '../../../tests/support/plain-recipe.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

function madeOf(recipe: BatterRecipe) {
  const made = batchForFats(recipe, fats, 1000);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return made.value;
}

describe('the water of a recipe', () => {
  it('comes to the same batch whichever of the three ways it is told', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const { lyeConcentrationPercent: _, ...dry } = recipe;
        const told = madeOf(recipe);
        const { waterPerLye, waterPercentOfFats } = told.water;
        for (const view of [{ waterPerLye }, { waterPercentOfFats }]) {
          const again = madeOf(batterOf({ ...dry, ...view }, fats));
          expect(Math.abs(again.waterG / told.waterG - 1)).toBeLessThan(1e-9);
          expect(Math.abs(again.batchMl / told.batchMl - 1)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  /** 2 g of water for 1 g of NaOH is a lye of 1/3; 1000 g of fats with 330 g of water has 33 %. */
  it('is what was asked for', () => {
    const { lyeConcentrationPercent: _, ...dry } = plain;
    expect(madeOf(batterOf({ ...dry, waterPerLye: 2 }, fats)).water.lyeConcentrationPercent).toBeCloseTo(
      100 / 3,
      9,
    );
    expect(madeOf(batterOf({ ...dry, waterPercentOfFats: 33 }, fats)).waterG).toBeCloseTo(330, 9);
  });

  it('keeps a ratio to the flakes as they are weighed, impurities and all', () => {
    const { lyeConcentrationPercent: _, ...dry } = plain;
    const { waterG, naohG } = madeOf(batterOf({ ...dry, waterPerLye: 2, naohPurityPercent: 90 }, fats));
    expect(waterG / naohG).toBeCloseTo(2, 9);
  });

  /** 10 % of a vinegar of 5 % brings 9.5 g of water on 100 g of fats: within the lye's or besides, never both. */
  it('counts the water of a vinegar once', () => {
    const vinegar = { acid: 'acetic-acid', percent: 10, strengthPercent: 5 } as const;
    const onTop = madeOf({ ...plain, acids: [vinegar] }).water;
    expect(onTop.allWaterPercentOfFats - onTop.waterPercentOfFats).toBeCloseTo(9.5, 9);
    const instead = madeOf({ ...plain, acids: [{ ...vinegar, replacesWater: true }] }).water;
    expect(instead.waterPercentOfFats).toBeCloseTo(onTop.waterPercentOfFats, 9);
    expect(instead.allWaterPercentOfFats).toBeCloseTo(instead.waterPercentOfFats, 9);
  });

  it('is that of a lye of 33 % where a recipe says nothing of it', () => {
    const { lyeConcentrationPercent: _, ...dry } = plain;
    expect(madeOf(batterOf(dry, fats)).water.lyeConcentrationPercent).toBeCloseTo(33, 9);
    expect(batterOf({ ...dry, waterPerLye: 2 }, fats)).toMatchObject({
      waterPerLye: undefined,
      waterPercentOfFats: undefined,
    });
  });

  /** 142.187 g of NaOH (see the batch by hand) in 430.87 g of lye; 2 % of a colour in 3 g of water each is 60 g more. */
  it('counts what comes with colours, and with acids, for how wet the batter is', () => {
    expect(effectiveLyePercent(plain, fats)).toBe(33);
    expect(effectiveLyePercent({ ...plain, kohSharePercent: 60, kohPurityPercent: 90 }, fats)).toBe(33);
    expect(batterOf({ ...plain, lyeConcentrationPercent: 40 }, fats).lyeConcentrationPercent).toBe(40);
    const carrier = { kind: 'water', perGram: 3 } as const;
    const wet = { ...plain, colourants: [{ key: 'a', title: 'Blue', percent: 2, carrier }] };
    expect(effectiveLyePercent(wet, fats)).toBeCloseTo((100 * 142.187) / 490.87, 3);
    const { water } = madeOf(wet);
    expect(water.waterPerLye).toBeCloseTo((430.87 - 142.187) / 142.187, 4);
    expect(water.waterPercentOfFats).toBeCloseTo(28.8683, 3);
    expect(water.allWaterPercentOfFats).toBeCloseTo(34.8683, 3);
  });

  it('is refused when told twice, or when it makes lye too strong or too weak, in the field that said so', () => {
    const { lyeConcentrationPercent: _, ...dry } = plain;
    expect(checkRecipe({ ...plain, waterPerLye: 2 }, fats)).toMatchObject([
      {
        ...{ code: 'recipe.water-twice', path: ['waterPerLye'], value: 2 },
        fields: ['lyeConcentrationPercent', 'waterPerLye'],
      },
    ]);
    expect(checkRecipe({ ...dry, waterPerLye: 2, waterPercentOfFats: 30 }, fats)).toMatchObject([
      { path: ['waterPercentOfFats'], fields: ['waterPerLye', 'waterPercentOfFats'] },
    ]);
    expect(checkRecipe(dry, fats)).toEqual([]);
    expect(checkRecipe({ ...dry, waterPerLye: 0.8 }, fats)).toMatchObject([
      {
        ...{
          code: 'lye.concentration-out-of-range',
          path: ['waterPerLye'],
          value: 0.8,
          field: 'waterPerLye',
        },
        ...{ percent: expect.closeTo(100 / 1.8, 6) as number },
        accepted: { kind: 'range', low: 20, high: 50, unit: '%' },
      },
    ]);
    expect(checkRecipe({ ...dry, waterPercentOfFats: 140 }, fats)).toMatchObject([
      { code: 'lye.concentration-out-of-range', path: ['waterPercentOfFats'] },
    ]);
    // Equal weights are a lye of 50 % and four to one is 20 %, to the last bit or not.
    for (const waterPerLye of [1, 4]) expect(checkRecipe({ ...dry, waterPerLye }, fats)).toEqual([]);
  });
});
