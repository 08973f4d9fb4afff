import type { BatterRecipe } from '#chemistry';

/** A usual recipe without anything beside fats, lye and water; tests change what they are about. */
export const plainRecipe: BatterRecipe = {
  fats: [
    { fat: 'coconut', percent: 30 },
    { fat: 'olive', percent: 70 },
  ],
  lyeConcentrationPercent: 33,
  superfatPercent: 5,
  naohPurityPercent: 100,
  sodiumLactatePercent: 0,
  saltPercent: 0,
  sugarPercent: 0,
  batterTemperatureC: 38,
};
