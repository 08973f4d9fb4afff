import type { BatterRecipe } from '../recipe/batter-recipe.js';
import type { LyeAmounts } from './lye-amounts.js';

/** Lye taken from a stock solution in place of flakes of NaOH, grams. */
export interface LyeStock {
  /** Pure NaOH in it, by mass. */
  readonly percent: number;
  readonly massG: number;
  /** Water to weigh besides; what the solution brings is not in it. */
  readonly waterG: number;
}

/**
 * The same lye from a stock solution: pure NaOH / strength of it, and the rest of the lye as water. Flakes of KOH are weighed
 * as before.
 * @returns undefined where the NaOH comes from flakes; water below 0 where the solution is weaker than the lye, which
 * `checkRecipe` refuses
 */
export function lyeStock(
  { lyeStockPercent: percent }: Pick<BatterRecipe, 'lyeStockPercent'>,
  { pureNaohG, kohG, lyeG }: LyeAmounts,
): LyeStock | undefined {
  if (percent === undefined) return undefined;
  const massG = pureNaohG / (percent / 100);
  return { percent, massG, waterG: lyeG - massG - kohG };
}
