import type { FatFacts } from '../fats/fat-facts.js';
import { carrierShare } from '../lye/lye-amounts.js';
import type { BatchAmounts } from './batch-amounts.js';
import type { BatterRecipe } from '../recipe/batter-recipe.js';
import { fragranceRisks } from './fragrance-risks.js';
import { keepingRisks } from './keeping-risks.js';
import { liquidRisks, sugarAndSaltOf, sugarInAdditions } from './liquid-risks.js';
import { lyeRisks } from './lye-risks.js';
import type { Risk } from './risk.js';

/**
 * What makers look at twice in a batch: overdosed additives, unusual lye, a superfat that a lean lot would use up,
 * fragrance over its limit, browning, what spoils. None of it stops the batch.
 * The thresholds are common practice, no source, unless they say otherwise.
 */
export function recipeRisks(
  recipe: BatterRecipe,
  batch: BatchAmounts,
  fats: ReadonlyMap<string, FatFacts>,
): Risk[] {
  return [
    ...lyeRisks(recipe, batch, fats),
    ...hardenerRisks(recipe, fats),
    ...liquidRisks(recipe, fats),
    ...fragranceRisks(recipe, batch),
    ...colourRisks(recipe),
    ...spoilingRisks(recipe),
    ...keepingRisks(recipe, fats),
  ];
}

function hardenerRisks(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Risk[] {
  const { sodiumLactatePercent, batterTemperatureC } = recipe;
  const { saltPercent, sugarPercent: withoutAdditions } = sugarAndSaltOf(recipe, fats);
  const sugarPercent = withoutAdditions + sugarInAdditions(recipe);
  const risks: Risk[] = [];
  if (sodiumLactatePercent > 3) {
    risks.push({ code: 'sodium-lactate.much', level: 'medium', percent: sodiumLactatePercent });
  }
  if (saltPercent > 1 && saltPercent < 25) {
    risks.push({ code: 'salt.much', level: 'low', percent: saltPercent });
  }
  if (saltPercent >= 25) risks.push({ code: 'salt.bar', level: 'medium', percent: saltPercent });
  if (sugarPercent > 2 || (sugarPercent > 0 && batterTemperatureC > 45)) {
    risks.push({ code: 'sugar.heats', level: 'medium', percent: sugarPercent, belowC: 40 });
  }
  return risks;
}

function colourRisks(recipe: BatterRecipe): Risk[] {
  const { colourants = [], superfatPercent } = recipe;
  const risks: Risk[] = colourants
    .filter(({ percent }) => percent > 3)
    .map(({ title, percent }) => ({ code: 'colourant.much', level: 'low', colourant: title, percent }));
  const oil = 100 * carrierShare(recipe, 'fat');
  if (oil > 1) {
    // No lye is made for this oil, so all of it stays: superfat' = (superfat + oil) / (100 + oil).
    const raised = (100 * (superfatPercent + oil)) / (100 + oil);
    risks.push({ code: 'colourant.oil', level: 'medium', superfatPercent: raised });
  }
  return risks;
}

/** Hotter than this milk powder turns brown and smells. Common practice, no source: makers of milk soap work below 35 to 40 °C. */
const MILK_SCORCHES_C = 40;

function spoilingRisks({ additions = [], batterTemperatureC }: BatterRecipe): Risk[] {
  return additions.flatMap(({ kind, title }): Risk[] => {
    if (kind === 'powdered-milk' && batterTemperatureC > MILK_SCORCHES_C)
      return [{ code: 'addition.scorches', level: 'medium', addition: title, belowC: MILK_SCORCHES_C }];
    if (kind === 'fresh-food') return [{ code: 'addition.spoils', level: 'high', addition: title }];
    if (kind === 'dried-plant') return [{ code: 'addition.browns', level: 'low', addition: title }];
    return [];
  });
}
