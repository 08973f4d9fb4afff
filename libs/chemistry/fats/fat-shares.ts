import type { BatterRecipe, FatAmount } from '../recipe/batter-recipe.js';
import type { FatFacts } from './fat-facts.js';

/**
 * A recipe's fats with their facts and shares scaled to 1: rounded percentages still add up, and grams stand to each
 * other as they are weighed.
 * @throws RangeError on a fat that is not in the table: check the recipe first
 */
export function fatShares(
  recipe: Pick<BatterRecipe, 'fats'>,
  fats: ReadonlyMap<string, FatFacts>,
): { readonly facts: FatFacts; readonly share: number }[] {
  const sum = recipe.fats.reduce((total, each) => total + weightOf(each), 0);
  return recipe.fats.map((each) => {
    const facts = fats.get(each.fat);
    if (facts === undefined) throw new RangeError(`there is no fat “${each.fat}”: check the recipe first`);
    return { facts, share: weightOf(each) / sum };
  });
}

/**
 * The fats of a batch that has a size of its own.
 * @returns grams of all fats together; undefined where the batch is made for the pieces
 * @throws RangeError on a size by a fat that the recipe does not have: check the recipe first
 */
export function givenFatsG({ fats, size }: Pick<BatterRecipe, 'fats' | 'size'>): number | undefined {
  if (size === undefined || size.by === 'pieces') return undefined;
  if (size.by === 'fats') return size.grams;
  const sized = fats.find(({ fat }) => fat === size.fat);
  if (sized === undefined) throw new RangeError(`there is no fat “${size.fat}”: check the recipe first`);
  return (size.grams * fats.reduce((total, each) => total + weightOf(each), 0)) / weightOf(sized);
}

function weightOf({ percent, grams }: FatAmount): number {
  return percent ?? grams ?? 0;
}
