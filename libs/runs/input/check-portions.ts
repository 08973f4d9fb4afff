import { checkFragrances } from '#chemistry';
import type { BatchPart, Recipe } from '#contract';
import { under, type Issue } from '#units';

/**
 * Whether what scents a portion can go into it: with the fragrances of the recipe there is not too much of all in any
 * portion, and its allergens are on the list.
 * @returns issues with paths from the part
 */
export function checkPortions({ portions = [] }: BatchPart, recipe: Recipe | undefined): Issue[] {
  const ofRecipe = recipe?.fragrances ?? [];
  return portions.flatMap(({ fragrances }, i) => {
    if (fragrances.length === 0) return [];
    const issues = checkFragrances({ fragrances: [...ofRecipe, ...fragrances] });
    return under(
      ['portions', i],
      issues.flatMap((issue) => ofPortion(issue, ofRecipe.length)),
    );
  });
}

/** With the place among the portion's own fragrances; what is wrong with one of the recipe is told there. */
function ofPortion(issue: Issue, ofRecipe: number): Issue[] {
  const [list = '', index, ...field] = issue.path;
  if (typeof index !== 'number') return [issue];
  return index < ofRecipe ? [] : [{ ...issue, path: [list, index - ofRecipe, ...field] }];
}
