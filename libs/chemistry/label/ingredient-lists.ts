import type { BatchAmounts } from '../batter/batch-amounts.js';
import type { FatFacts } from '../fats/fat-facts.js';
import type { BatterRecipe } from '../recipe/batter-recipe.js';
import { byMass, type LabelIngredient } from './label-ingredient.js';
import { addedBeside, NAMES, water } from './put-in.js';
import { saponified } from './saponified.js';

/** The list of ingredients for a label, in the two ways in which soap makers write it. */
export interface IngredientLists {
  /** What was put in, lye and water among it. */
  readonly asPutIn: readonly LabelIngredient[];
  /** What the lye makes of it, before any water dries out. */
  readonly asSoap: readonly LabelIngredient[];
}

/**
 * The list of ingredients of a batch: by mass, largest first, colourants last, perfumes together as Parfum. So Regulation (EC)
 * 1223/2009, Article 19(1)(g), wants it; what makes up less than 1 % may stand in any order, and stands by its mass here.
 * Both lists weigh what the batch weighs.
 * @param recipe that of the batch, with its colours
 */
export function ingredientLists(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  batch: BatchAmounts,
): IngredientLists {
  const beside = addedBeside(recipe, fats, batch);
  const naohG = batch.stock === undefined ? batch.naohG : batch.pureNaohG;
  const asPutIn: LabelIngredient[] = [
    ...batch.fats.map(({ fat, title, massG, inci }) => ({ key: fat, title, massG, ...(inci && { inci }) })),
    { ...NAMES.naoh, massG: naohG },
    { ...NAMES.koh, massG: batch.kohG },
    water(batch.lyeG - naohG - batch.kohG),
    ...beside.acids,
    ...beside.others,
  ];
  const asSoap = [...saponified(recipe, fats, batch), ...beside.others];
  return { asPutIn: byMass(asPutIn), asSoap: byMass(asSoap) };
}
