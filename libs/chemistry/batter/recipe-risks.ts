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
    risks.push({
      code: 'sodium-lactate.much',
      level: 'medium',
      text: `Sodium lactate at ${shown(sodiumLactatePercent)} % of the fats makes edges brittle.`,
      remedy: '1 to 3 % is usual.',
    });
  }
  if (saltPercent > 1 && saltPercent < 25) {
    risks.push({
      code: 'salt.much',
      level: 'low',
      text: `Salt at ${shown(saltPercent)} % of the fats thickens the batter and lowers the lather.`,
      remedy: '0.5 to 1 % hardens; a salt bar takes 25 % or more, and much coconut.',
    });
  }
  if (saltPercent >= 25) {
    risks.push({
      code: 'salt.bar',
      level: 'medium',
      text: `With salt at ${shown(saltPercent)} % of the fats this sets within hours and crumbles when cut late.`,
      remedy: 'Cast it in single cavities, or cut it while it is warm.',
    });
  }
  if (sugarPercent > 2 || (sugarPercent > 0 && batterTemperatureC > 45)) {
    risks.push({
      code: 'sugar.heats',
      level: 'medium',
      text: `Sugar at ${shown(sugarPercent)} % of the fats heats the soap from within: it may crack or rise out of the mould.`,
      remedy: 'Use 1 to 2 %, dissolved in part of the water, and work below 40 °C.',
    });
  }
  return risks;
}

function fragranceRisks(recipe: BatterRecipe, batch: BatchAmounts): Risk[] {
  const { fragrance } = recipe;
  if (fragrance === undefined || fragrance.percent === 0) return [];
  const risks: Risk[] = [];
  const limit = fragrance.supplierLimitPercent;
  const share = shareOfDrySoap(recipe, batch);
  if (limit === undefined) {
    risks.push({
      code: 'fragrance.limit-unknown',
      level: 'medium',
      text: `At ${shown(fragrance.percent)} % of the fats the fragrance makes up to ${shown(share)} % of the dry soap; its limit is not given.`,
      remedy:
        'Ask the supplier for the certificate and write its limit for soap (category 9) as supplierLimitPercent.',
    });
  } else if (share > limit) {
    // The share is s·f / (rest + s·f), so the dose for a share is found from the rest, not by proportion.
    const rest = dryMass(recipe, batch) - batch.fragranceG;
    const allowed = floored((100 * rest * limit) / (100 - limit) / batch.fatsG);
    risks.push({
      code: 'fragrance.over-limit',
      level: 'high',
      text: `The fragrance makes up to ${shown(share)} % of the dry soap; its supplier allows ${shown(limit)} %.`,
      remedy: `Use at most ${String(allowed)} % of the fats.`,
    });
  }
  if (fragrance.percent > 6) {
    risks.push({
      code: 'fragrance.much',
      level: 'medium',
      text: `Fragrance at ${shown(fragrance.percent)} % of the fats may soften the soap and speed the batter up.`,
      remedy: '3 to 6 % is usual.',
    });
  }
  if (fragrance.behaviour === 'seizing') {
    risks.push({
      code: 'fragrance.seizes',
      level: 'high',
      text: 'This fragrance seizes the batter as it goes in: nothing can be poured or piped after that.',
      remedy: 'Use another, or leave it out of this batch.',
    });
  }
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
    .map(({ title, percent }) => ({
      code: 'colourant.much',
      level: 'low',
      text: `${title} at ${shown(percent)} % of the fats may colour the lather and rub off.`,
      remedy: '1 to 3 % colours well; test a piece on a white cloth.',
    }));
  const oil = 100 * carrierShare(recipe, 'fat');
  if (oil > 1) {
    // No lye is made for this oil, so all of it stays: superfat' = (superfat + oil) / (100 + oil).
    const raised = (100 * (superfatPercent + oil)) / (100 + oil);
    risks.push({
      code: 'colourant.oil',
      level: 'medium',
      text: `The oil that carries the colour gets no lye: the superfat becomes about ${shown(raised)} %.`,
      remedy: 'Stir the colour into some of the weighed fats instead, or into glycerol.',
    });
  }
  return risks;
}

function spoilingRisks({ additions = [] }: BatterRecipe): Risk[] {
  return additions.flatMap(({ kind, title }): Risk[] => {
    if (kind === 'fresh-food') {
      return [
        {
          code: 'addition.spoils',
          level: 'high',
          text: `${title}: fresh food in soap without a preservative may brown, smell or grow mould.`,
          remedy:
            'Use it dried, strained and in place of some water; keep a bar of the lot back and watch it.',
        },
      ];
    }
    if (kind === 'dried-plant') {
      return [
        {
          code: 'addition.browns',
          level: 'low',
          text: `${title}: plants brown in fresh soap, and damp ones may grow mould on it.`,
          remedy: 'Put them on top late and bone dry, and wrap the soap once it is cured.',
        },
      ];
    }
    return [];
  });
}

function shown(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** Rounded down, so that the figure can be followed. */
function floored(value: number): number {
  return Math.floor(value * 10) / 10;
}
