import { acidWater } from '../lye/acids.js';
import { carrierShare, type LyeAmounts } from '../lye/lye-amounts.js';
import type { BatterRecipe } from '../recipe/batter-recipe.js';

/** 60 % of the lactate solution is lactate. Water that the reaction itself sets free with acids is small beside this. */
const LACTATE_WATER = 0.4;

/** What the dry mass of a batch is reckoned from, grams. */
export interface WetBatch extends LyeAmounts {
  readonly fatsG: number;
  readonly batchG: number;
  readonly sodiumLactateG: number;
  /** Water that liquids bring. */
  readonly liquidWaterG: number;
}

/**
 * Soap that has lost all its water, g: the least it can weigh, so that what is in it makes the largest share.
 * What else the flakes of lye hold counts as water.
 */
export function dryMass(recipe: BatterRecipe, batch: WetBatch): number {
  const flakes = batch.naohG - batch.pureNaohG + batch.kohG - batch.pureKohG;
  const acidsAndColours = batch.fatsG * (acidWater(recipe.acids, 'all') + carrierShare(recipe, 'water'));
  const waterG = batch.waterG + batch.liquidWaterG + acidsAndColours + LACTATE_WATER * batch.sodiumLactateG;
  return batch.batchG - flakes - waterG;
}
