import type { BatchAmounts } from './batch-amounts.js';
import type { BatterRecipe } from './batter-recipe.js';
import { browningOf } from './browning.js';
import type { Risk } from './risk.js';

/**
 * What makers look at twice in a batch: overdosed additives, unusual lye, a superfat that a lean lot would use up,
 * fragrance over its limit, browning, what spoils. None of it stops the batch.
 * The thresholds are common practice, no source, unless they say otherwise.
 */
export function recipeRisks(recipe: BatterRecipe, batch: BatchAmounts): Risk[] {
  return [
    ...lyeRisks(recipe, batch),
    ...hardenerRisks(recipe),
    ...fragranceRisks(recipe, batch),
    ...colourRisks(recipe),
    ...spoilingRisks(recipe),
  ];
}

function lyeRisks(recipe: BatterRecipe, batch: BatchAmounts): Risk[] {
  const { superfatPercent } = recipe;
  const concentration = recipe.lyeConcentrationPercent;
  const risks: Risk[] = [];
  if (concentration < 25 || concentration > 40) {
    risks.push({
      code: 'lye.unusual',
      text: `A lye concentration of ${shown(concentration)} % is unusual.`,
      remedy: '25 to 40 % is common; 33 % suits most recipes.',
    });
  }
  if (superfatPercent < 0) {
    risks.push({
      code: 'lye.excess',
      text: `This batter holds ${shown(-superfatPercent)} % more alkali than its fats can take: the soap burns skin and eyes.`,
      remedy: 'Salt it out or neutralise it, and test it, before anyone touches it without gloves.',
    });
  } else if (superfatPercent < 2) {
    risks.push({
      code: 'lye.little-superfat',
      text: `A superfat of ${shown(superfatPercent)} % leaves little room for scales that err.`,
      remedy: '5 % is common.',
    });
  } else if (superfatPercent > 8 && !isMostlyCoconut(recipe)) {
    risks.push({
      code: 'lye.much-superfat',
      text: `A superfat of ${shown(superfatPercent)} % makes soft soap that goes rancid sooner.`,
      remedy: '2 to 8 % is usual; 15 to 20 % is for soap that is nearly all coconut.',
    });
  }
  if (superfatPercent >= 0 && batch.superfat.low < 0) {
    risks.push({
      code: 'lye.lean-lot',
      text:
        `With lots at the low end of what the standards allow, the superfat would be ${shown(batch.superfat.low)} %: ` +
        'lye would be left over.',
      remedy: `Take the saponification values from your lots’ certificates, or a superfat of ${String(Math.ceil(superfatPercent - batch.superfat.low))} %.`,
    });
  }
  if (batch.fatsG < 300) {
    risks.push({
      code: 'batch.small',
      text: 'Under 300 g of fats an error of 1 g of lye counts.',
      remedy: 'Weigh to 0.1 g.',
    });
  }
  return risks;
}

function isMostlyCoconut({ fats }: BatterRecipe): boolean {
  return fats.some(({ fat, percent }) => fat === 'coconut' && percent >= 80);
}

function hardenerRisks(recipe: BatterRecipe): Risk[] {
  const { sodiumLactatePercent, saltPercent, sugarPercent, batterTemperatureC } = recipe;
  const risks: Risk[] = [];
  if (sodiumLactatePercent > 3) {
    risks.push({
      code: 'sodium-lactate.much',
      text: `Sodium lactate at ${shown(sodiumLactatePercent)} % of the fats makes edges brittle.`,
      remedy: '1 to 3 % is usual.',
    });
  }
  if (saltPercent > 1 && saltPercent < 25) {
    risks.push({
      code: 'salt.much',
      text: `Salt at ${shown(saltPercent)} % of the fats thickens the batter and lowers the lather.`,
      remedy: '0.5 to 1 % hardens; a salt bar takes 25 % or more, and much coconut.',
    });
  }
  if (saltPercent >= 25) {
    risks.push({
      code: 'salt.bar',
      text: `With salt at ${shown(saltPercent)} % of the fats this sets within hours and crumbles when cut late.`,
      remedy: 'Cast it in single cavities, or cut it while it is warm.',
    });
  }
  if (sugarPercent > 2 || (sugarPercent > 0 && batterTemperatureC > 45)) {
    risks.push({
      code: 'sugar.heats',
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
  const share = shareOfDrySoap(batch);
  if (limit === undefined) {
    risks.push({
      code: 'fragrance.limit-unknown',
      text: `At ${shown(fragrance.percent)} % of the fats the fragrance makes up to ${shown(share)} % of the dry soap; its limit is not given.`,
      remedy:
        'Ask the supplier for the certificate and write its limit for soap (category 9) as supplierLimitPercent.',
    });
  } else if (share > limit) {
    // The share is s·f / (rest + s·f), so the dose for a share is found from the rest, not by proportion.
    const rest = dryMass(batch) - batch.fragranceG;
    const allowed = floored((100 * rest * limit) / (100 - limit) / batch.fatsG);
    risks.push({
      code: 'fragrance.over-limit',
      text: `The fragrance makes up to ${shown(share)} % of the dry soap; its supplier allows ${shown(limit)} %.`,
      remedy: `Use at most ${String(allowed)} % of the fats.`,
    });
  }
  if (fragrance.percent > 6) {
    risks.push({
      code: 'fragrance.much',
      text: `Fragrance at ${shown(fragrance.percent)} % of the fats may soften the soap and speed the batter up.`,
      remedy: '3 to 6 % is usual.',
    });
  }
  const browning = browningOf(fragrance);
  if (browning !== undefined) risks.push(browning);
  return risks;
}

/** Fragrance in soap that has lost all its water: the most it can come to, so the safe figure beside a limit. */
function shareOfDrySoap(batch: BatchAmounts): number {
  return (100 * batch.fragranceG) / dryMass(batch);
}

function dryMass(batch: BatchAmounts): number {
  return batch.batchG - batch.waterG;
}

function colourRisks({ colourants = [], superfatPercent }: BatterRecipe): Risk[] {
  const risks: Risk[] = colourants
    .filter(({ percent }) => percent > 3)
    .map(({ title, percent }) => ({
      code: 'colourant.much',
      text: `${title} at ${shown(percent)} % of the fats may colour the lather and rub off.`,
      remedy: '1 to 3 % colours well; test a piece on a white cloth.',
    }));
  const oil = colourants.reduce(
    (sum, { percent, carrier }) => sum + (carrier?.kind === 'fat' ? percent * carrier.perGram : 0),
    0,
  );
  if (oil > 1) {
    // No lye is made for this oil, so all of it stays: superfat' = (superfat + oil) / (100 + oil).
    const raised = (100 * (superfatPercent + oil)) / (100 + oil);
    risks.push({
      code: 'colourant.oil',
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
