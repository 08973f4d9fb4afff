import type { BatchAmounts } from '../batter/batch-amounts.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { acidStrength } from '../lye/acids.js';
import type { AcidName, BatterRecipe } from '../recipe/batter-recipe.js';
import type { LabelIngredient } from './label-ingredient.js';

/** Share of lactate in the solution that is weighed. */
const LACTATE = 0.6;

/** INCI name of honey, recalled; other additions go by what the maker calls them. */
const HONEY = 'Mel';

/** What every soap has, by its name on a label. INCI names recalled. */
export const NAMES = {
  naoh: { key: 'naoh', title: 'Sodium hydroxide (NaOH)', inci: 'Sodium Hydroxide' },
  koh: { key: 'koh', title: 'Potassium hydroxide (KOH)', inci: 'Potassium Hydroxide' },
  water: { key: 'water', title: 'Water, distilled', inci: 'Aqua' },
  glycerol: { key: 'glycerol', title: 'Glycerol', inci: 'Glycerin' },
  lactate: { key: 'sodium-lactate', title: 'Sodium lactate, 60% solution', inci: 'Sodium Lactate' },
  salt: { key: 'salt', title: 'Salt', inci: 'Sodium Chloride' },
  sugar: { key: 'sugar', title: 'Sugar', inci: 'Sucrose' },
  fragrance: { key: 'fragrance', title: 'Fragrance', inci: 'Parfum' },
} as const;

const acidNames: Readonly<Record<AcidName, string>> = {
  'citric-acid': 'Citric Acid',
  'citric-acid-monohydrate': 'Citric Acid',
  'lactic-acid': 'Lactic Acid',
  'acetic-acid': 'Acetic Acid',
};

export function water(massG: number): LabelIngredient {
  return { ...NAMES.water, massG };
}

/** Of an acid as weighed, what is acid, g; the rest is water. */
export function acidG(recipe: BatterRecipe, index: number, massG: number): number {
  const share = recipe.acids?.[index];
  return share === undefined ? 0 : massG * acidStrength(share);
}

/** What goes in beside fats and lye: acids, which the lye turns into salts, and all others, which stay what they are. */
export function addedBeside(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  batch: BatchAmounts,
): { readonly acids: LabelIngredient[]; readonly others: LabelIngredient[] } {
  const { sodiumLactateG, saltG, sugarG } = batch;
  return {
    acids: batch.acids.flatMap(({ key, title, massG }, i) => {
      const pureG = acidG(recipe, i, massG);
      return [{ key, title, inci: acidNames[key as AcidName], massG: pureG }, water(massG - pureG)];
    }),
    others: [
      { ...NAMES.lactate, massG: LACTATE * sodiumLactateG },
      water((1 - LACTATE) * sodiumLactateG),
      { ...NAMES.salt, massG: saltG },
      { ...NAMES.sugar, massG: sugarG },
      ...batch.liquids.map(({ key, title, inci, massG }) => ({ key, title, massG, ...(inci && { inci }) })),
      ...batch.additions.map(({ key, title, massG }, i) => ({
        ...{ key, title, massG },
        ...(recipe.additions?.[i]?.kind === 'honey' && { inci: HONEY }),
      })),
      ...batch.fragrances.map(({ massG }) => ({ ...NAMES.fragrance, massG })),
      ...batch.colourants.flatMap(({ key, title, massG, carrier }) => [
        { key, title, massG, isColourant: true } as const,
        ...(carrier === undefined ? [] : [carrierOf(carrier, fats)]),
      ]),
    ],
  };
}

function carrierOf(
  { kind, fat, massG }: NonNullable<BatchAmounts['colourants'][number]['carrier']>,
  fats: ReadonlyMap<string, FatFacts>,
): LabelIngredient {
  if (kind !== 'fat') return { ...(kind === 'water' ? NAMES.water : NAMES.glycerol), massG };
  const facts = fat === undefined ? undefined : fats.get(fat);
  if (facts === undefined) return { key: 'carrier-oil', title: 'Oil to stir colours into', massG };
  const { key, title, inci } = facts;
  return { key, title, massG, ...(inci !== undefined && { inci }) };
}
