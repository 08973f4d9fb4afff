import type { FatFacts } from '../fats/fat-facts.js';
import { knownLiquid, type KnownLiquid } from '../liquids/figures-of.js';
import { acidMolesPerGram } from '../liquids/liquid-facts.js';
import type { LiquidShare, WrittenRecipe } from '../recipe/batter-recipe.js';
import { acidWater } from './acids.js';
import { alkaliPerMole, demandBesidesLiquids } from './alkali-demand.js';
import { waterLaw } from './water-law.js';

/** A liquid of a recipe, and how much of it goes with each gram of fats. */
export interface LiquidPerFat extends KnownLiquid {
  readonly addedTo: 'lye' | 'batter';
  /** g for each gram of fats; likewise what it brings. */
  readonly massG: number;
  readonly waterG: number;
  readonly fatG: number;
  readonly sugarG: number;
  readonly saltG: number;
  /** Alkali that its acid takes, mol for each gram of fats. */
  readonly acidMoles: number;
}

/**
 * How much of each liquid a recipe takes.
 *
 * Shares are of all liquid, M: plain water and liquids, by mass. A liquid i of share pᵢ, with wᵢ of water and αᵢ mol of acid in
 * each gram, brings pᵢ·M·wᵢ of the water W that the recipe asks for. W itself grows with the alkali, W = a + k·n, and the alkali
 * with the acids, n = n₀ + Σ αᵢ·pᵢ·M. So M − M·Σpᵢ·(1 − wᵢ) = W, which is linear in M:
 *
 *   M = (a + k·n₀ − e + Σ mⱼ·(1 − wⱼ + k·αⱼ)) / (1 − Σ pᵢ·(1 − wᵢ + k·αᵢ))
 *
 * with the liquids j that are told in grams, mⱼ for each gram of fats, and e, the water of acids that replace water. Without
 * acids and grams this is W / (1 − Σ pᵢ·(1 − wᵢ)).
 * @returns in the order of the recipe; amounts that make no sense where shares or acids are too large, which
 * `checkLiquids` refuses
 * @throws RangeError on a liquid or a fat that is not known: check the recipe first
 */
export function liquidsPerFat(
  recipe: WrittenRecipe,
  fats: ReadonlyMap<string, FatFacts>,
): readonly LiquidPerFat[] {
  const { liquids = [] } = recipe;
  if (liquids.length === 0) return [];
  const perMole = alkaliPerMole(recipe);
  const { gPerFat, gPerMole } = waterLaw(recipe, perMole);
  const all = liquids.map((share) => ({ share, ...readable(share) }));
  const fatsInRecipe = recipe.fats.reduce((sum, { grams = 0 }) => sum + grams, 0);
  const dryAnd = ({ figures }: KnownLiquid): number =>
    1 - figures.waterG / 100 + gPerMole * acidMolesPerGram(figures);
  const inGrams = ({ grams = 0 }: LiquidShare): number => (grams === 0 ? 0 : grams / fatsInRecipe);
  const water =
    gPerFat + gPerMole * demandBesidesLiquids(recipe, fats) - acidWater(recipe.acids, 'in-the-lye');
  const asked = water + all.reduce((sum, each) => sum + inGrams(each.share) * dryAnd(each), 0);
  const left = all.reduce((rest, each) => rest - shareOf(each.share) * dryAnd(each), 1);
  return all.map(({ share, ...liquid }) => {
    const massG = inGrams(share) + (shareOf(share) * asked) / left;
    const { waterG, fatG, sugarG, saltG } = liquid.figures;
    return {
      ...liquid,
      addedTo: share.addedTo ?? 'lye',
      massG,
      waterG: (massG * waterG) / 100,
      fatG: (massG * fatG) / 100,
      sugarG: (massG * sugarG) / 100,
      saltG: (massG * saltG) / 100,
      acidMoles: massG * acidMolesPerGram(liquid.figures),
    };
  });
}

function shareOf({ percentOfLiquid = 0 }: LiquidShare): number {
  return percentOfLiquid / 100;
}

function readable(share: LiquidShare): KnownLiquid {
  const known = knownLiquid(share);
  if (known === undefined)
    throw new RangeError(`there is no liquid “${share.liquid}”: check the recipe first`);
  return known;
}

/** One quantity of all liquids of a recipe, for each gram of fats. */
export function sumOf(
  liquids: readonly LiquidPerFat[],
  what: 'massG' | 'waterG' | 'fatG' | 'sugarG' | 'saltG' | 'acidMoles',
  into?: 'lye' | 'batter',
): number {
  return liquids.reduce(
    (sum, each) => (into === undefined || each.addedTo === into ? sum + each[what] : sum),
    0,
  );
}
