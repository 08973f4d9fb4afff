import { acidWater } from './acids.js';
import { alkaliPerMole, demandBesidesLiquids, keptShare, saponificationPerFat } from './alkali-demand.js';
import type { BatterRecipe, CarrierKind, WrittenRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { liquidsPerFat, sumOf, type LiquidPerFat } from './liquids-per-fat.js';

/** What goes into the lye jug, grams, unrounded: rounding belongs to the page that shows it. */
export interface LyeAmounts {
  /** Alkali that reacts. */
  readonly pureNaohG: number;
  readonly pureKohG: number;
  /** Alkali to weigh: the pure amount divided by the purity. */
  readonly naohG: number;
  readonly kohG: number;
  /** Plain water to weigh. */
  readonly waterG: number;
  /** All together; liquids that lye is dissolved in are not in it. */
  readonly lyeG: number;
}

type Fats = ReadonlyMap<string, FatFacts>;

/**
 * Lye for a mass of fats.
 * - alkali for the fats, mol = Σ mᵢ · SVᵢ/1000 / M(KOH) · (1 − superfat/100). Superfat is a lye discount: lye left
 *   out, not fat put in. Fat of a milk gets no alkali of its own; see `superfatRange`.
 * - alkali for the acids, mol: see `acidDemand`, and `liquidsPerFat` for those of liquids; it comes on top.
 * - pure and weighed alkali: see `alkaliPerMole`.
 * - lye = pure / concentration, water = lye − weighed alkali. The concentration is that of pure alkali; what else
 *   the flakes hold (carbonate and water) stands in for water, so the batter's water stays as meant. Water that a
 *   vinegar brings in place of it is left out of the jug, and so is the water of all liquids.
 * @param fatsG mass of all fats, g
 * @throws RangeError on a fat or a liquid that is not in its table: check the recipe first
 */
export function lyeForFats(
  recipe: BatterRecipe,
  fats: Fats,
  fatsG: number,
  liquids: readonly LiquidPerFat[] = liquidsPerFat(recipe, fats),
): LyeAmounts {
  const { pureNaohG, pureKohG, naohG, kohG } = alkaliPerFat(recipe, fats, liquids);
  const perFat = (pureNaohG + pureKohG) / (recipe.lyeConcentrationPercent / 100);
  const elsewhere = acidWater(recipe.acids, 'in-the-lye') + sumOf(liquids, 'waterG');
  const waterG = perFat - naohG - kohG - elsewhere;
  return {
    pureNaohG: fatsG * pureNaohG,
    pureKohG: fatsG * pureKohG,
    naohG: fatsG * naohG,
    kohG: fatsG * kohG,
    waterG: fatsG * waterG,
    lyeG: fatsG * (naohG + kohG + waterG),
  };
}

/** Alkali for one gram of fats, as `lyeForFats` has it. */
function alkaliPerFat(
  recipe: WrittenRecipe,
  fats: Fats,
  liquids: readonly LiquidPerFat[],
): Omit<LyeAmounts, 'waterG' | 'lyeG'> {
  const moles = demandBesidesLiquids(recipe, fats) + sumOf(liquids, 'acidMoles');
  const { pureNaohG, pureKohG, naohG, kohG } = alkaliPerMole(recipe);
  return {
    pureNaohG: moles * pureNaohG,
    pureKohG: moles * pureKohG,
    naohG: moles * naohG,
    kohG: moles * kohG,
  };
}

/**
 * The superfat that this lye leaves, with the saponification values used and in lots at either end of their ranges:
 * s = 1 − (1 − superfat) · SV(used) / SV(lot), then (s + o) / (1 + o) for what gets no lye: oil that carries colours, and the fat of
 * liquids, o in g of fats that take as much alkali as the recipe's own. Below 0, such a lot keeps lye.
 * @returns per cent, over all lots that the ranges allow, every fat at its end at once
 */
export function superfatRange(
  recipe: WrittenRecipe,
  fats: Fats,
  liquids: readonly LiquidPerFat[] = liquidsPerFat(recipe, fats),
): { low: number; used: number; high: number } {
  const given = saponificationPerFat(recipe, fats, 'used') * keptShare(recipe);
  const at = (end: 'low' | 'used' | 'high'): number => {
    const needed = saponificationPerFat(recipe, fats, end);
    const besides = carrierShare(recipe, 'fat') + liquidFat(liquids, fats, needed);
    return (100 * (1 - given / needed + besides)) / (1 + besides);
  };
  return { low: at('low'), used: at('used'), high: at('high') };
}

/**
 * Fat of the liquids, as g of fats that take as much alkali as the recipe's own: milk fat takes a fifth more.
 * @param needed g of KOH for one gram of the recipe's fats
 */
function liquidFat(liquids: readonly LiquidPerFat[], fats: Fats, needed: number): number {
  return liquids.reduce((sum, { fatG, shipped }) => {
    const facts = shipped?.fat === undefined ? undefined : fats.get(shipped.fat);
    const ratio = facts === undefined ? 1 : facts.saponificationMgKohPerG.used / 1000 / needed;
    return sum + fatG * ratio;
  }, 0);
}

/** What carries the colours of a kind, g per g of fats. */
export function carrierShare({ colourants = [] }: WrittenRecipe, kind: CarrierKind): number {
  return colourants.reduce(
    (sum, { percent, carrier }) => sum + (carrier?.kind === kind ? (percent / 100) * carrier.perGram : 0),
    0,
  );
}
