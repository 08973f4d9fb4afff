import type { BatterRecipe } from './batter-recipe.js';
import type { FatFacts } from './fat-facts.js';
import { fatShares } from './fat-shares.js';
import { naohPerKoh } from './molar-mass.js';

/** What goes into the lye jug, grams, unrounded: rounding belongs to the page that shows it. */
export interface LyeAmounts {
  /** NaOH that reacts. */
  readonly pureNaohG: number;
  /** NaOH to weigh: the pure amount divided by the purity. */
  readonly naohG: number;
  /** Water to weigh. */
  readonly waterG: number;
  /** Both together. */
  readonly lyeG: number;
}

/**
 * Lye for a mass of fats.
 * - pure NaOH = Σ mᵢ · SVᵢ/1000 · 0.71289 · (1 − superfat/100). Superfat is a lye discount: lye left out, not
 *   fat put in.
 * - weighed NaOH = pure / purity. Flakes of 97 % need more of them, never less.
 * - lye = pure / concentration, water = lye − weighed NaOH. The concentration is that of the pure NaOH; what
 *   else the flakes hold (carbonate and water) stands in for water, so the batter's water stays as meant.
 * @param fatsG mass of all fats, g
 * @throws RangeError on a fat that is not in the table: check the recipe first
 */
export function lyeForFats(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  fatsG: number,
): LyeAmounts {
  const kohPerFat = fatShares(recipe, fats).reduce(
    (sum, { facts, share }) => sum + (share * facts.saponificationMgKohPerG.used) / 1000,
    0,
  );
  const pureNaohG = fatsG * kohPerFat * naohPerKoh * (1 - recipe.superfatPercent / 100);
  const naohG = pureNaohG / (recipe.naohPurityPercent / 100);
  const lyeG = pureNaohG / (recipe.lyeConcentrationPercent / 100);
  return { pureNaohG, naohG, waterG: lyeG - naohG, lyeG };
}
