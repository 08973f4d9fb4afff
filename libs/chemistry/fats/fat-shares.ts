import type { BatterRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from './fat-facts.js';

/** A recipe's fats with their facts and shares scaled to 1, so that rounded percentages still add up. */
export function fatShares(
  recipe: Pick<BatterRecipe, 'fats'>,
  fats: ReadonlyMap<string, FatFacts>,
): { readonly facts: FatFacts; readonly share: number }[] {
  const sum = recipe.fats.reduce((total, { percent }) => total + percent, 0);
  return recipe.fats.map(({ fat, percent }) => {
    const facts = fats.get(fat);
    if (facts === undefined) throw new RangeError(`there is no fat “${fat}”: check the recipe first`);
    return { facts, share: percent / sum };
  });
}
