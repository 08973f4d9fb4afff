import { batchForFats, ingredientLists, type LabelIngredient } from '#chemistry';
import type { PartAmounts, PartLabel } from '#contract';
import { partBatter } from '../input/part-batter.js';
import { piecesWith } from '../input/pieces.js';
import type { ResolvedRun } from '../input/resolve-run.js';

/** The lists of ingredients for labels, one for each part that is mixed from a recipe. */
export function partLabels(run: ResolvedRun, amounts: readonly PartAmounts[]): PartLabel[] {
  return amounts.flatMap(({ part: key, title, batch: sized, count }) => {
    const part = run.parts.get(key);
    const recipe = part?.kind === 'batch' ? run.recipes.get(part.recipe) : undefined;
    if (part?.kind !== 'batch' || recipe === undefined || sized === undefined) return [];
    const size = { volumeMl: sized.batchMl, ofRun: count / piecesWith(run.order, key) };
    const { batter } = partBatter(part, recipe, run.fats, size);
    const batch = batchForFats(batter, run.fats, sized.fatsG);
    if (!batch.ok) return [];
    const { asPutIn, asSoap } = ingredientLists(batter, run.fats, batch.value);
    return [
      {
        part: key,
        title,
        asPutIn: asPutIn.map(shown),
        asSoap: asSoap.map(shown),
        allergens: batch.value.allergens,
        unknownAllergens: batch.value.fragrances
          .filter(({ hasAllergens, massG }) => !hasAllergens && massG > 0)
          .map((each) => each.title),
      },
    ];
  });
}

function shown({ key, title, inci, massG, isColourant }: LabelIngredient): PartLabel['asPutIn'][number] {
  return {
    ...{ key, title, massG },
    ...(inci === undefined ? {} : { inci }),
    ...(isColourant === undefined ? {} : { isColourant }),
  };
}
