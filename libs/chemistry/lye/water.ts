import type { BatterRecipe, WrittenRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { acidWater } from './acids.js';
import { alkaliPerFat, carrierShare, lyeForFats, type LyeAmounts } from './lye-amounts.js';

/** What a recipe that says nothing of water gets: common practice, no source. */
const USUAL_LYE_CONCENTRATION = 33;

/** The water of a batch: the lye's in three views, and all of it. */
export interface WaterViews {
  readonly lyeConcentrationPercent: number;
  readonly waterPerLye: number;
  readonly waterPercentOfFats: number;
  /** With what acids and colours bring besides. */
  readonly allWaterPercentOfFats: number;
  /** What the lye's concentration would be with all of it: how wet the batter really is. */
  readonly withAllWaterPercent: number;
}

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

/** The water of a batch. @param fatsG g of fats that the lye is for */
export function waterViews(recipe: WrittenRecipe, lye: LyeAmounts, fatsG: number): WaterViews {
  const pure = lye.pureNaohG + lye.pureKohG;
  const inLye = lye.waterG + fatsG * acidWater(recipe.acids, 'in-the-lye');
  const besides = fatsG * waterBesides(recipe);
  const lyeG = lye.naohG + lye.kohG + inLye;
  return {
    lyeConcentrationPercent: (100 * pure) / lyeG,
    waterPerLye: inLye / (lye.naohG + lye.kohG),
    waterPercentOfFats: (100 * inLye) / fatsG,
    allWaterPercentOfFats: (100 * (inLye + besides)) / fatsG,
    withAllWaterPercent: (100 * pure) / (lyeG + besides),
  };
}

/** Water that comes on top of the lye's, g per g of fats: with acids that do not replace it, and with colours. */
function waterBesides(recipe: WrittenRecipe): number {
  const acid = acidWater(recipe.acids, 'all') - acidWater(recipe.acids, 'in-the-lye');
  return acid + carrierShare(recipe, 'water');
}

/**
 * The lye concentration that the batter's water comes to, all water counted: what its clocks should be read for.
 * @returns per cent
 */
export function effectiveLyePercent(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): number {
  const percent = waterViews(recipe, lyeForFats(recipe, fats, 1), 1).withAllWaterPercent;
  // A recipe of 33 % must not count as being off 33 % by the last bit of a division.
  return Math.round(percent * 1e6) / 1e6;
}
