import { describe, expect, it } from 'vitest';
import { fatTable, lyeForFats } from '#chemistry';
import { plainRecipe } from '../../../tests/support/plain-recipe.js';

const recipe = {
  ...plainRecipe,
  fats: [{ fat: 'coconut', percent: 100 }],
  lyeConcentrationPercent: 30,
  superfatPercent: 20,
  naohPurityPercent: 96,
};

describe('lyeForFats', () => {
  /** 500 g · 0.2565 · 0.712888 · 0.8 = 73.142 g pure; / 0.96 = 76.190 g weighed; / 0.30 = 243.807 g of lye. */
  it('shows the pure amount beside the weighed one, and the whole', () => {
    const lye = lyeForFats(recipe, fatTable([]), 500);
    expect(lye.pureNaohG).toBeCloseTo(73.142, 2);
    expect(lye.naohG).toBeCloseTo(76.19, 2);
    expect(lye.lyeG).toBeCloseTo(243.807, 2);
    expect(lye.naohG + lye.waterG).toBeCloseTo(lye.lyeG, 9);
  });

  it('rounds nothing', () => {
    const third = lyeForFats(recipe, fatTable([]), 1 / 3);
    expect(third.pureNaohG * 3).toBeCloseTo(lyeForFats(recipe, fatTable([]), 1).pureNaohG, 14);
  });
});
