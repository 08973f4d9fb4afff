import { describe, expect, it } from 'vitest';
import { batchForVolume, fatTable } from '#chemistry';
import { plainRecipe } from '../../support/plain-recipe.js';

const GRAMS_PER_OUNCE = 28.349523;
const ML_PER_CUBIC_INCH = 16.387064;

describe('the mould rule', () => {
  /**
   * Common practice, no source: 0.40 oz of fats per cubic inch of mould. A rule of thumb and no oracle;
   * being 6 % away from it would mean a slip in units or densities.
   */
  it.each([28, 30, 33])('holds within 6 %% at %d %% lye', (lyeConcentrationPercent) => {
    const recipe = {
      ...plainRecipe,
      fats: [
        { fat: 'olive', percent: 45 },
        { fat: 'coconut', percent: 25 },
        { fat: 'palm', percent: 25 },
        { fat: 'castor', percent: 5 },
      ],
      lyeConcentrationPercent,
    };
    const batch = batchForVolume(recipe, fatTable([]), 100 * ML_PER_CUBIC_INCH);
    const ounces = batch.ok ? batch.value.fatsG / GRAMS_PER_OUNCE : NaN;
    expect(Math.abs(ounces / 40 - 1)).toBeLessThan(0.06);
  });
});
