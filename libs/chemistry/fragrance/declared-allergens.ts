import type { Fragrance } from '../recipe/batter-recipe.js';
import { allergenNamed, RINSE_OFF_THRESHOLD_PERCENT } from './allergens.js';

/** An allergen in the finished soap. */
export interface DeclaredAllergen {
  readonly name: string;
  /** Of the dry soap: the most it can come to. */
  readonly percent: number;
}

/**
 * The allergens that a label of this soap has to name: what all fragrances bring of each, as a share of the dry soap,
 * where that is above the threshold for rinse-off products.
 * @param fragrances each with its mass, g
 * @param dryG the soap once it has lost all its water, g
 * @returns most first
 */
export function declaredAllergens(
  fragrances: readonly (Pick<Fragrance, 'allergens'> & { readonly massG: number })[],
  dryG: number,
): DeclaredAllergen[] {
  const percents = new Map<string, number>();
  for (const { massG, allergens = [] } of fragrances) {
    for (const { name: typed, percent } of allergens) {
      const name = allergenNamed(typed) ?? typed;
      percents.set(name, (percents.get(name) ?? 0) + (massG * percent) / dryG);
    }
  }
  return [...percents]
    .map(([name, percent]) => ({ name, percent }))
    .filter(({ percent }) => percent > RINSE_OFF_THRESHOLD_PERCENT)
    .sort((a, b) => b.percent - a.percent || (a.name < b.name ? -1 : 1));
}
