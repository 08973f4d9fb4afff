import type { WrittenRecipe } from '../recipe/batter-recipe.js';
import type { AlkaliPerMole } from './alkali-demand.js';

/** What a recipe that says nothing of water gets: common practice, no source. */
export const USUAL_LYE_CONCENTRATION = 33;

/** The water of the lye as it follows from the alkali: so much for each gram of fats, and so much for each mole. */
export interface WaterLaw {
  readonly gPerFat: number;
  readonly gPerMole: number;
}

/**
 * With p grams of pure alkali and w grams of weighed alkali for each mole: a concentration c leaves p / c − w of water, a ratio r
 * asks for r · w; water of x % of the fats does not depend on the alkali.
 */
export function waterLaw(recipe: WrittenRecipe, perMole: AlkaliPerMole): WaterLaw {
  const { lyeConcentrationPercent, waterPerLye, waterPercentOfFats } = recipe;
  const weighed = perMole.naohG + perMole.kohG;
  if (lyeConcentrationPercent === undefined) {
    if (waterPerLye !== undefined) return { gPerFat: 0, gPerMole: waterPerLye * weighed };
    if (waterPercentOfFats !== undefined) return { gPerFat: waterPercentOfFats / 100, gPerMole: 0 };
  }
  const share = (lyeConcentrationPercent ?? USUAL_LYE_CONCENTRATION) / 100;
  return { gPerFat: 0, gPerMole: (perMole.pureNaohG + perMole.pureKohG) / share - weighed };
}
