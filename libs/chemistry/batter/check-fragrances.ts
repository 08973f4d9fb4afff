import type { Issue } from '#units';
import { nearestFats } from '../fats/nearest-fats.js';
import { allergenNamed, allergenNames } from '../fragrance/allergens.js';
import { MOST_FRAGRANCE_PERCENT } from './recipe-limits.js';
import type { Fragrance, WrittenRecipe } from '../recipe/batter-recipe.js';

/** Rounding on a supplier's sheet may carry a list this far over 100 %. */
const ALLERGENS_CEILING = 100.5;

/**
 * Whether there is not too much of all fragrances, and their allergens are on the list that labels go by.
 * @returns issues, paths from the recipe: `recipe.fragrances-out-of-range`, `recipe.unknown-allergen`, `recipe.allergens-over-100`
 */
export function checkFragrances({ fragrances = [] }: Pick<WrittenRecipe, 'fragrances'>): Issue[] {
  return [
    ...fragrances.flatMap((fragrance, i) => allergenIssues(fragrance, i)),
    ...togetherIssues(fragrances),
  ];
}

/** Each may be within the limit, and all together too much; one that is too much by itself is told by `recipeLimits`. */
function togetherIssues(fragrances: readonly Fragrance[]): Issue[] {
  const high = MOST_FRAGRANCE_PERCENT;
  const sum = fragrances.reduce((total, { percent }) => total + percent, 0);
  // The slack lets ten of 1 % through, whatever their binary sum.
  if (!(sum > high + 1e-9) || fragrances.some(({ percent }) => percent > high)) return [];
  const accepted = { kind: 'range', low: 0, high, unit: '%' } as const;
  return [{ code: 'recipe.fragrances-out-of-range', path: ['fragrances'], value: sum, accepted, sum }];
}

function allergenIssues({ title, allergens = [] }: Fragrance, index: number): Issue[] {
  const issues = allergens.flatMap(({ name }, i): Issue[] => {
    if (allergenNamed(name) !== undefined) return [];
    const path = ['fragrances', index, 'allergens', i, 'name'];
    const named = allergenNames.map((each) => ({ key: each, title: each }));
    return [{ code: 'recipe.unknown-allergen', path, value: name, nearest: nearestFats(name, named, 3) }];
  });
  const sum = allergens.reduce((total, { percent }) => total + percent, 0);
  if (sum <= ALLERGENS_CEILING) return issues;
  const accepted = { kind: 'range', low: 0, high: 100, unit: '%' } as const;
  const path = ['fragrances', index, 'allergens'];
  return [...issues, { code: 'recipe.allergens-over-100', path, value: sum, accepted, title, sum }];
}
