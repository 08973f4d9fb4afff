import { acidDemand, acidWater } from './acids.js';
import type { BatterRecipe, CarrierKind, WrittenRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { fatShares } from '../fats/fat-shares.js';
import { molarMass } from '../fats/molar-mass.js';

/** What goes into the lye jug, grams, unrounded: rounding belongs to the page that shows it. */
export interface LyeAmounts {
  /** Alkali that reacts. */
  readonly pureNaohG: number;
  readonly pureKohG: number;
  /** Alkali to weigh: the pure amount divided by the purity. */
  readonly naohG: number;
  readonly kohG: number;
  /** Water to weigh. */
  readonly waterG: number;
  /** All together. */
  readonly lyeG: number;
}

type Fats = ReadonlyMap<string, FatFacts>;

/**
 * Lye for a mass of fats.
 * - alkali for the fats, mol = Σ mᵢ · SVᵢ/1000 / M(KOH) · (1 − superfat/100). Superfat is a lye discount: lye left
 *   out, not fat put in.
 * - alkali for the acids, mol: see `acidDemand`; it comes on top.
 * - the KOH share is one of moles; pure mass = mol · M.
 * - weighed alkali = pure / purity. Flakes of 97 % need more of them, never less.
 * - lye = pure / concentration, water = lye − weighed alkali. The concentration is that of pure alkali; what else
 *   the flakes hold (carbonate and water) stands in for water, so the batter's water stays as meant. Water that a
 *   vinegar brings in place of it is left out of the jug.
 * @param fatsG mass of all fats, g
 * @throws RangeError on a fat that is not in the table: check the recipe first
 */
export function lyeForFats(recipe: BatterRecipe, fats: Fats, fatsG: number): LyeAmounts {
  const { pureNaohG, pureKohG, naohG, kohG } = alkaliPerFat(recipe, fats);
  const perFat = (pureNaohG + pureKohG) / (recipe.lyeConcentrationPercent / 100);
  const elsewhere = acidWater(recipe.acids, 'in-the-lye');
  return {
    pureNaohG: fatsG * pureNaohG,
    pureKohG: fatsG * pureKohG,
    naohG: fatsG * naohG,
    kohG: fatsG * kohG,
    waterG: fatsG * (perFat - naohG - kohG - elsewhere),
    lyeG: fatsG * (perFat - elsewhere),
  };
}

/** Alkali for one gram of fats, as `lyeForFats` has it; it does not depend on the water. */
export function alkaliPerFat(recipe: WrittenRecipe, fats: Fats): Omit<LyeAmounts, 'waterG' | 'lyeG'> {
  const forFats = (saponificationPerFat(recipe, fats, 'used') / molarMass.koh) * keptShare(recipe);
  const moles = forFats + acidDemand(recipe.acids);
  const kohShare = (recipe.kohSharePercent ?? 0) / 100;
  const pureNaohG = moles * (1 - kohShare) * molarMass.naoh;
  const pureKohG = moles * kohShare * molarMass.koh;
  const naohG = pureNaohG / (recipe.naohPurityPercent / 100);
  const kohG = pureKohG / ((recipe.kohPurityPercent ?? 100) / 100);
  return { pureNaohG, pureKohG, naohG, kohG };
}

/**
 * The superfat that this lye leaves, with the saponification values used and in lots at either end of their ranges:
 * s = 1 − (1 − superfat) · SV(used) / SV(lot), then (s + oil) / (1 + oil) for the oil that carries colours, which gets
 * no lye. Below 0, such a lot keeps lye.
 * @returns per cent, over all lots that the ranges allow, every fat at its end at once
 */
export function superfatRange(
  recipe: WrittenRecipe,
  fats: Fats,
): { low: number; used: number; high: number } {
  const given = saponificationPerFat(recipe, fats, 'used') * keptShare(recipe);
  const oil = carrierShare(recipe, 'fat');
  const at = (end: 'low' | 'used' | 'high'): number => {
    const left = 1 - given / saponificationPerFat(recipe, fats, end);
    return (100 * (left + oil)) / (1 + oil);
  };
  return { low: at('low'), used: at('used'), high: at('high') };
}

/** What carries the colours of a kind, g per g of fats. */
export function carrierShare({ colourants = [] }: WrittenRecipe, kind: CarrierKind): number {
  return colourants.reduce(
    (sum, { percent, carrier }) => sum + (carrier?.kind === kind ? (percent / 100) * carrier.perGram : 0),
    0,
  );
}

function keptShare({ superfatPercent }: WrittenRecipe): number {
  return 1 - superfatPercent / 100;
}

/** g of KOH for one gram of fats. */
function saponificationPerFat(recipe: WrittenRecipe, fats: Fats, end: 'low' | 'used' | 'high'): number {
  return fatShares(recipe, fats).reduce(
    (sum, { facts, share }) => sum + (share * facts.saponificationMgKohPerG[end]) / 1000,
    0,
  );
}
