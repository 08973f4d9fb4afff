import type { FatFacts } from '../fats/fat-facts.js';
import { fatShares } from '../fats/fat-shares.js';
import { acidDemand } from '../lye/acids.js';
import { liquidsPerFat, sumOf } from '../lye/liquids-per-fat.js';
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
    superfat(recipe, fats),
    leanLot(recipe, batch),
    acid(recipe, batch, fats),
    small(batch),
    heavy(batch),
    tooCool(recipe, fats),
  ].flatMap((risk) => risk ?? []);
}

/** A recipe of 25 or 40 % must not count as off it by the last bit of a division; per cent. */
const ROUNDING = 1e-9;

function strength({ lyeConcentrationPercent: lye }: BatterRecipe, { water }: BatchAmounts): Risk | undefined {
  if (lye > 40 + ROUNDING) return { code: 'lye.strong', level: 'medium', lyePercent: lye };
  if (water.withAllWaterPercent >= 25 - ROUNDING) return undefined;
  return { code: 'lye.wet', level: 'medium', lyePercent: water.withAllWaterPercent };
}

function superfat(recipe: BatterRecipe, facts: ReadonlyMap<string, FatFacts>): Risk | undefined {
  const { superfatPercent } = recipe;
  if (superfatPercent < 0) return { code: 'lye.excess', level: 'high', percent: -superfatPercent };
  if (superfatPercent < 2) return { code: 'lye.little-superfat', level: 'medium', superfatPercent };
  const coconut = fatShares(recipe, facts).some((each) => each.facts.key === 'coconut' && each.share >= 0.8);
  if (superfatPercent <= 8 || coconut) return undefined;
  return { code: 'lye.much-superfat', level: 'low', superfatPercent };
}

function leanLot({ superfatPercent }: BatterRecipe, { superfat: left }: BatchAmounts): Risk | undefined {
  if (superfatPercent < 0 || left.low >= 0) return undefined;
  const enoughPercent = Math.ceil(superfatPercent - left.low);
  return { code: 'lye.lean-lot', level: 'high', leftOverPercent: -left.low, enoughPercent };
}

/** From this share of all alkali on, a wrong strength of the acid would matter more than the superfat. */
const ACID_SHARE = 0.1;

function acid(
  recipe: BatterRecipe,
  batch: BatchAmounts,
  fats: ReadonlyMap<string, FatFacts>,
): Risk | undefined {
  const ofLiquids = sumOf(liquidsPerFat(recipe, fats), 'acidMoles');
  const taken = (acidDemand(recipe.acids) + ofLiquids) * batch.fatsG;
  const all = batch.pureNaohG / molarMass.naoh + batch.pureKohG / molarMass.koh;
  if (taken < ACID_SHARE * all) return undefined;
  return { code: 'acid.takes-much', level: 'high', percent: (100 * taken) / all };
}

function small({ fatsG, naohG, kohG }: BatchAmounts): Risk | undefined {
  if (fatsG >= 300) return undefined;
  const gramPercent = 100 / (naohG + kohG);
  if (fatsG < 100) return { code: 'batch.small', level: 'high', gramPercent, scalesG: 0.01 };
  return { code: 'batch.small', level: 'medium', gramPercent, scalesG: 0.1 };
}

/**
 * What one person lifts with both hands and nothing in the way (load constant of the revised NIOSH lifting equation, Waters
 * et al., Ergonomics 36 (1993) 749): a pot of caustic batter is poured by hand.
 */
const LIFTS_G = 23_000;

/** Many times that is a factory’s batch, or a slip of a digit. A choice, no source. */
const SURELY_TOO_HEAVY = 4;

function heavy({ batchG }: BatchAmounts): Risk | undefined {
  if (batchG <= LIFTS_G) return undefined;
  const level = batchG > LIFTS_G * SURELY_TOO_HEAVY ? 'high' : 'medium';
  return { code: 'batch.heavy', level, massG: batchG, liftsG: LIFTS_G, batches: Math.ceil(batchG / LIFTS_G) };
}

/** Stearic acid melts at 69 °C and beeswax at 62 to 65 °C (CRC Handbook, from memory); blends of them lower. */
const MELTED_C = 60;

function tooCool(recipe: BatterRecipe, facts: ReadonlyMap<string, FatFacts>): Risk | undefined {
  const { batterTemperatureC } = recipe;
  const fats = fatShares(recipe, facts)
    .filter((each) => (each.facts.kind === 'fatty-acid' || isHardWax(each.facts)) && each.share >= 0.03)
    .map((each) => ({ fat: each.facts.key, title: each.facts.title }));
  if (fats.length === 0 || batterTemperatureC >= MELTED_C) return undefined;
  return { code: 'batter.too-cool', level: 'high', fats, batterTemperatureC, enoughC: MELTED_C };
}

function isHardWax({ key, kind }: FatFacts): boolean {
  return kind === 'wax' && key !== 'jojoba';
}
