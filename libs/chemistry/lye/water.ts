import type { BatterRecipe, WaterStatement, WrittenRecipe } from '../batter/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { alkaliPerFat, type LyeAmounts } from './lye-amounts.js';

/** What a recipe that says nothing of water gets: common practice, no source. */
export const USUAL_LYE_CONCENTRATION = 33;

/** The three views of the water in a batch. */
export type WaterViews = { readonly [K in keyof WaterStatement]-?: number };

/**
 * The recipe with its water as a lye concentration, whichever way it was written.
 * With a grams of pure alkali and w grams of weighed alkali for each gram of fats: a ratio r gives a / (w (1 + r)),
 * water of p % of the fats gives a / (w + p/100).
 * @throws RangeError on a fat that is not in the table: check the recipe first
 */
export function batterOf<T extends WrittenRecipe>(
  recipe: T,
  fats: ReadonlyMap<string, FatFacts>,
): T & BatterRecipe {
  const lyeConcentrationPercent = concentrationOf(recipe, fats);
  return { ...recipe, waterPerLye: undefined, waterPercentOfFats: undefined, lyeConcentrationPercent };
}

function concentrationOf(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): number {
  const { lyeConcentrationPercent, waterPerLye, waterPercentOfFats } = recipe;
  if (lyeConcentrationPercent !== undefined) return lyeConcentrationPercent;
  if (waterPerLye === undefined && waterPercentOfFats === undefined) return USUAL_LYE_CONCENTRATION;
  const { pureNaohG, pureKohG, naohG, kohG } = alkaliPerFat(recipe, fats);
  const weighed = naohG + kohG;
  const water = waterPerLye === undefined ? (waterPercentOfFats ?? 0) / 100 : weighed * waterPerLye;
  return (100 * (pureNaohG + pureKohG)) / (weighed + water);
}

/** The water of a batch in all three views. @param fatsG g of fats that the lye is for */
export function waterViews(lye: LyeAmounts, fatsG: number): WaterViews {
  return {
    lyeConcentrationPercent: (100 * (lye.pureNaohG + lye.pureKohG)) / lye.lyeG,
    waterPerLye: lye.waterG / (lye.naohG + lye.kohG),
    waterPercentOfFats: (100 * lye.waterG) / fatsG,
  };
}
