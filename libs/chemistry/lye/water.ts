import type { BatterRecipe, WrittenRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { acidWater } from './acids.js';
import { alkaliPerMole, demandBesidesLiquids } from './alkali-demand.js';
import { liquidsPerFat, sumOf, type LiquidPerFat } from './liquids-per-fat.js';
import { carrierShare, lyeForFats, type LyeAmounts } from './lye-amounts.js';
import { USUAL_LYE_CONCENTRATION, waterLaw } from './water-law.js';

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
 * With n moles of alkali for each gram of fats, p grams of pure and w grams of weighed alkali in each, and water W:
 * p·n / (w·n + W).
 * @throws RangeError on a fat or a liquid that is not in its table: check the recipe first
 */
export function batterOf<T extends WrittenRecipe>(
  recipe: T,
  fats: ReadonlyMap<string, FatFacts>,
): T & BatterRecipe {
  const lyeConcentrationPercent = recipe.lyeConcentrationPercent ?? concentrationOf(recipe, fats);
  return { ...recipe, waterPerLye: undefined, waterPercentOfFats: undefined, lyeConcentrationPercent };
}

function concentrationOf(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): number {
  const { waterPerLye, waterPercentOfFats } = recipe;
  if (waterPerLye === undefined && waterPercentOfFats === undefined) return USUAL_LYE_CONCENTRATION;
  const perMole = alkaliPerMole(recipe);
  const { gPerFat, gPerMole } = waterLaw(recipe, perMole);
  const moles = demandBesidesLiquids(recipe, fats) + sumOf(liquidsPerFat(recipe, fats), 'acidMoles');
  const pure = moles * (perMole.pureNaohG + perMole.pureKohG);
  return (100 * pure) / (moles * (perMole.naohG + perMole.kohG + gPerMole) + gPerFat);
}

/** The water of a batch; that of liquids counts as the lye's. @param fatsG g of fats that the lye is for */
export function waterViews(
  recipe: WrittenRecipe,
  lye: LyeAmounts,
  fatsG: number,
  liquids: readonly LiquidPerFat[],
): WaterViews {
  const pure = lye.pureNaohG + lye.pureKohG;
  const inLye = lye.waterG + fatsG * (acidWater(recipe.acids, 'in-the-lye') + sumOf(liquids, 'waterG'));
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
  const liquids = liquidsPerFat(recipe, fats);
  const percent = waterViews(recipe, lyeForFats(recipe, fats, 1, liquids), 1, liquids).withAllWaterPercent;
  // A recipe of 33 % must not count as being off 33 % by the last bit of a division.
  return Math.round(percent * 1e6) / 1e6;
}
