import { batchForFats, fatTable, recipeRisks, type BatterRecipe, type Risk } from '#chemistry';

const fats = fatTable([]);

/** A recipe that nobody would warn of; tests change what they are about. */
export const calmRecipe: BatterRecipe = {
  fats: [
    { fat: 'olive', percent: 70 },
    { fat: 'coconut', percent: 30 },
  ],
  lyeConcentrationPercent: 33,
  superfatPercent: 6,
  naohPurityPercent: 99,
  sodiumLactatePercent: 2,
  saltPercent: 0,
  sugarPercent: 0,
  batterTemperatureC: 38,
};

/** What is risky about the calm recipe once something of it is changed. */
export function risksOf(over: Partial<BatterRecipe>, fatsG = 1000): Risk[] {
  const recipe = { ...calmRecipe, ...over };
  const batch = batchForFats(recipe, fats, fatsG);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return recipeRisks(recipe, batch.value, fats);
}
