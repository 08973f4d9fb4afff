import type { FatFacts } from '../fats/fat-facts.js';
import { acidWater } from '../lye/acids.js';
import { carrierShare } from '../lye/lye-amounts.js';
import type { BatchAmounts } from './batch-amounts.js';
import type { BatterRecipe } from '../recipe/batter-recipe.js';
import { browningOf } from './browning.js';
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
    ...hardenerRisks(recipe),
    ...fragranceRisks(recipe, batch),
    ...colourRisks(recipe),
    ...spoilingRisks(recipe),
  ];
}

function hardenerRisks(recipe: BatterRecipe): Risk[] {
  const { sodiumLactatePercent, saltPercent, sugarPercent, batterTemperatureC } = recipe;
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

function fragranceRisks(recipe: BatterRecipe, batch: BatchAmounts): Risk[] {
  const { fragrance } = recipe;
  if (fragrance === undefined || fragrance.percent === 0) return [];
  const risks: Risk[] = [];
  const { percent, supplierLimitPercent: limitPercent } = fragrance;
  const sharePercent = shareOfDrySoap(recipe, batch);
  if (limitPercent === undefined) {
    risks.push({ code: 'fragrance.limit-unknown', level: 'medium', percent, sharePercent });
  } else if (sharePercent > limitPercent) {
    // The share is s·f / (rest + s·f), so the dose for a share is found from the rest, not by proportion.
    const rest = dryMass(recipe, batch) - batch.fragranceG;
    const allowedPercent = floored((100 * rest * limitPercent) / (100 - limitPercent) / batch.fatsG);
    risks.push({ code: 'fragrance.over-limit', level: 'high', sharePercent, limitPercent, allowedPercent });
  }
  if (percent > 6) risks.push({ code: 'fragrance.much', level: 'medium', percent });
  if (fragrance.behaviour === 'seizing') risks.push({ code: 'fragrance.seizes', level: 'high' });
  const browning = browningOf(fragrance);
  if (browning !== undefined) risks.push(browning);
  return risks;
}

/** Fragrance in soap that has lost all its water: the most it can come to, so the safe figure beside a limit. */
function shareOfDrySoap(recipe: BatterRecipe, batch: BatchAmounts): number {
  return (100 * batch.fragranceG) / dryMass(recipe, batch);
}

/** 60 % of the lactate solution is lactate. Water that the reaction itself sets free with acids is small beside this. */
const LACTATE_WATER = 0.4;

function dryMass(recipe: BatterRecipe, batch: BatchAmounts): number {
  const flakes = batch.naohG - batch.pureNaohG + batch.kohG - batch.pureKohG;
  const acidsAndColours = batch.fatsG * (acidWater(recipe.acids, 'all') + carrierShare(recipe, 'water'));
  return batch.batchG - batch.waterG - flakes - acidsAndColours - LACTATE_WATER * batch.sodiumLactateG;
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

function spoilingRisks({ additions = [] }: BatterRecipe): Risk[] {
  return additions.flatMap(({ kind, title }): Risk[] => {
    if (kind === 'fresh-food') return [{ code: 'addition.spoils', level: 'high', addition: title }];
    if (kind === 'dried-plant') return [{ code: 'addition.browns', level: 'low', addition: title }];
    return [];
  });
}

/** Rounded down, so that the figure can be followed. */
function floored(value: number): number {
  return Math.floor(value * 10) / 10;
}
