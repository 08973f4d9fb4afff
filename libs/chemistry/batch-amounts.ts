import type { Issue, Result } from '#units';
import type { BatterRecipe } from './batter-recipe.js';
import { checkRecipe } from './check-recipe.js';
import { fatDensity } from './fat-density.js';
import type { FatFacts } from './fat-facts.js';
import { fatShares } from './fat-shares.js';
import { lyeForFats } from './lye-amounts.js';
import { lyeDensity } from './lye-density.js';

/** A batch to weigh, in grams and millilitres, unrounded. `naohG` is what is weighed, with its impurities. */
export interface BatchAmounts {
  readonly fats: { readonly fat: string; readonly title: string; readonly massG: number }[];
  readonly fatsG: number;
  readonly naohG: number;
  readonly waterG: number;
  /** 60 % solution. */
  readonly sodiumLactateG: number;
  readonly saltG: number;
  readonly sugarG: number;
  readonly fragranceG: number;
  /** Sum of all of the above. */
  readonly batchG: number;
  /** At the batter temperature. */
  readonly batchMl: number;
  readonly densityGPerMl: number;
}

/**
 * The batch made from a mass of fats.
 * Volume = Σ mass / density at the batter temperature, volumes being additive. What the reaction does to the
 * volume is left out: moulds are filled before it has gone far.
 * @param fatsG more than 0, at most 1 000 000 g
 * @returns the amounts, or the issues of `checkRecipe` and `batch.fats-out-of-range`
 */
export function batchForFats(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  fatsG: number,
): Result<BatchAmounts> {
  const issues = [
    ...checkRecipe(recipe, fats),
    ...sizeIssues('batch.fats-out-of-range', 'fatsG', fatsG, 'g'),
  ];
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: amounts(recipe, fats, fatsG) };
}

/**
 * The batch that fills a volume. Every amount grows in proportion to the fats, so the fats needed are the
 * volume over the volume that one gram of fats makes.
 * @param volumeMl more than 0, at most 1 000 000 mL, at the batter temperature; losses are the caller's
 * @returns the amounts, or the issues of `checkRecipe` and `batch.volume-out-of-range`
 */
export function batchForVolume(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  volumeMl: number,
): Result<BatchAmounts> {
  const issues = [
    ...checkRecipe(recipe, fats),
    ...sizeIssues('batch.volume-out-of-range', 'volumeMl', volumeMl, 'mL'),
  ];
  if (issues.length > 0) return { ok: false, issues };
  return { ok: true, value: amounts(recipe, fats, volumeMl / amounts(recipe, fats, 1).batchMl) };
}

/** Far beyond a bench, to catch kilograms typed as milligrams and the like. */
const LARGEST_BATCH = 1_000_000;

/**
 * Densities of what goes in besides fats and lye, g/mL, not corrected for heat.
 * Salt and sugar count with the volume of their crystals. Dissolved they take less room, so a batch with 2 % of
 * salt is counted 0.2 % too large; the salt of a salt bar mostly stays crystals.
 */
const additiveDensity = {
  /** 60 % solution, 20 °C [S14]. */
  sodiumLactate: 1.3131,
  /** Sodium chloride, crystals; from memory of S6. */
  salt: 2.165,
  /** Sucrose, crystals; from memory of S6. */
  sugar: 1.5805,
  /** Fragrance and essential oils lie between 0.85 and 1.10; common practice, no source. */
  fragrance: 0.95,
} as const;

function amounts(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>, fatsG: number): BatchAmounts {
  const shares = fatShares(recipe, fats);
  const lye = lyeForFats(recipe, fats, fatsG);
  const sodiumLactateG = (fatsG * recipe.sodiumLactatePercent) / 100;
  const saltG = (fatsG * recipe.saltPercent) / 100;
  const sugarG = (fatsG * recipe.sugarPercent) / 100;
  const fragranceG = (fatsG * (recipe.fragrance?.percent ?? 0)) / 100;
  const fatsMl = shares.reduce(
    (sum, { facts, share }) => sum + (fatsG * share) / fatDensity(facts, recipe.batterTemperatureC),
    0,
  );
  const batchG = fatsG + lye.naohG + lye.waterG + sodiumLactateG + saltG + sugarG + fragranceG;
  const batchMl =
    fatsMl +
    lye.lyeG / lyeDensity(recipe.lyeConcentrationPercent, recipe.batterTemperatureC) +
    sodiumLactateG / additiveDensity.sodiumLactate +
    saltG / additiveDensity.salt +
    sugarG / additiveDensity.sugar +
    fragranceG / additiveDensity.fragrance;
  return {
    fats: shares.map(({ facts, share }) => ({ fat: facts.key, title: facts.title, massG: fatsG * share })),
    fatsG,
    naohG: lye.naohG,
    waterG: lye.waterG,
    sodiumLactateG,
    saltG,
    sugarG,
    fragranceG,
    batchG,
    batchMl,
    densityGPerMl: batchG / batchMl,
  };
}

function sizeIssues(code: string, field: string, value: number, unit: 'g' | 'mL'): Issue[] {
  if (value > 0 && value <= LARGEST_BATCH) return [];
  const accepted = `more than 0, at most ${String(LARGEST_BATCH)} ${unit}`;
  return [
    {
      code,
      path: [field],
      message: `A batch of ${String(value)} ${unit} cannot be made; accepted: ${accepted}.`,
      value,
      accepted,
    },
  ];
}
