import type { FatFacts } from '../fats/fat-facts.js';
import { fatShares } from '../fats/fat-shares.js';
import { acidDemand } from '../lye/acids.js';
import { molarMass } from '../fats/molar-mass.js';
import type { BatchAmounts } from './batch-amounts.js';
import type { BatterRecipe } from '../recipe/batter-recipe.js';
import type { Risk } from './risk.js';

/**
 * What makers look at twice in the lye of a batch: its strength, the superfat, acids that take their part, batches too
 * small for the scales, fats that set before the lye is in. Thresholds: common practice, no source.
 */
export function lyeRisks(
  recipe: BatterRecipe,
  batch: BatchAmounts,
  fats: ReadonlyMap<string, FatFacts>,
): Risk[] {
  return [
    strength(recipe, batch),
    superfat(recipe),
    leanLot(recipe, batch),
    acid(recipe, batch),
    small(batch),
    tooCool(recipe, fats),
  ].flatMap((risk) => risk ?? []);
}

function strength({ lyeConcentrationPercent: lye }: BatterRecipe, { water }: BatchAmounts): Risk | undefined {
  if (lye > 40) {
    return {
      code: 'lye.unusual',
      level: 'medium',
      text: `Lye of ${shown(lye)} % gets very hot while it is mixed, and near 50 % it crystallises as it cools.`,
      remedy: '25 to 40 % is common; stir the lye in slowly, in the cold, and use it before it sets.',
    };
  }
  if (water.withAllWaterPercent >= 25) return undefined;
  return {
    code: 'lye.unusual',
    level: 'medium',
    text: `With all its water the batter is as wet as with lye of ${shown(water.withAllWaterPercent)} %: it sets slowly, shrinks and ashes.`,
    remedy: '25 to 40 % is common; take water that comes with vinegar or colours off the water of the lye.',
  };
}

function superfat(recipe: BatterRecipe): Risk | undefined {
  const { superfatPercent } = recipe;
  if (superfatPercent < 0) {
    return {
      code: 'lye.excess',
      level: 'high',
      text: `This batter holds ${shown(-superfatPercent)} % more alkali than its fats can take: the soap burns skin and eyes.`,
      remedy: 'Salt it out or neutralise it, and test it, before anyone touches it without gloves.',
    };
  }
  if (superfatPercent < 2) {
    return {
      code: 'lye.little-superfat',
      level: 'medium',
      text: `A superfat of ${shown(superfatPercent)} % leaves little room for scales that err.`,
      remedy: '5 % is common.',
    };
  }
  const coconut = recipe.fats.some(({ fat, percent }) => fat === 'coconut' && percent >= 80);
  if (superfatPercent <= 8 || coconut) return undefined;
  return {
    code: 'lye.much-superfat',
    level: 'low',
    text: `A superfat of ${shown(superfatPercent)} % makes soft soap that goes rancid sooner.`,
    remedy: '2 to 8 % is usual; 15 to 20 % is for soap that is nearly all coconut.',
  };
}

function leanLot({ superfatPercent }: BatterRecipe, { superfat: left }: BatchAmounts): Risk | undefined {
  if (superfatPercent < 0 || left.low >= 0) return undefined;
  return {
    code: 'lye.lean-lot',
    level: 'high',
    text: `Lots of these fats differ: with the leanest the superfat would be ${shown(left.low)} %, and lye would be left over.`,
    remedy: `Take the saponification values from your lots’ certificates, or a superfat of ${String(Math.ceil(superfatPercent - left.low))} %.`,
  };
}

/** From this share of all alkali on, a wrong strength of the acid would matter more than the superfat. */
const ACID_SHARE = 0.1;

function acid(recipe: BatterRecipe, batch: BatchAmounts): Risk | undefined {
  const taken = acidDemand(recipe.acids) * batch.fatsG;
  const all = batch.pureNaohG / molarMass.naoh + batch.pureKohG / molarMass.koh;
  if (taken < ACID_SHARE * all) return undefined;
  return {
    code: 'acid.takes-much',
    level: 'high',
    text: `The acid takes ${shown((100 * taken) / all)} % of the lye: were it weaker than written, that much lye would be left over.`,
    remedy: 'Check its strength on the label. A vinegar has about 5 %.',
  };
}

function small({ fatsG, naohG, kohG }: BatchAmounts): Risk | undefined {
  if (fatsG >= 300) return undefined;
  const gram = 100 / (naohG + kohG);
  return {
    code: 'batch.small',
    level: fatsG < 100 ? 'high' : 'medium',
    text: `In a batch this small 1 g of lye is ${shown(gram)} % of it.`,
    remedy:
      fatsG < 100 ? 'Weigh to 0.01 g, or make at least 300 g and cast what is left.' : 'Weigh to 0.1 g.',
  };
}

/** Stearic acid melts at 69 °C and beeswax at 62 to 65 °C (CRC Handbook, from memory); blends of them lower. */
const MELTED_C = 60;

function tooCool(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Risk | undefined {
  const hard = fatShares(recipe, fats).filter(
    ({ facts, share }) => (facts.kind === 'fatty-acid' || isHardWax(facts)) && share >= 0.03,
  );
  if (hard.length === 0 || recipe.batterTemperatureC >= MELTED_C) return undefined;
  const names = hard.map(({ facts }) => facts.title).join(' and ');
  return {
    code: 'batter.too-cool',
    level: 'high',
    text: `${names} set at ${shown(recipe.batterTemperatureC)} °C, and a fatty acid turns to soap at once: lye may be caught in lumps.`,
    remedy: 'Work at 60 °C or more, and stir until no lump is left.',
  };
}

function isHardWax({ key, kind }: FatFacts): boolean {
  return kind === 'wax' && key !== 'jojoba';
}

function shown(value: number): string {
  return String(Number(value.toFixed(1)));
}
