import type { FatFacts } from '../fats/fat-facts.js';
import { fatShares } from '../fats/fat-shares.js';
import { molarMass } from '../fats/molar-mass.js';
import type { WrittenRecipe } from '../recipe/batter-recipe.js';
import { acidDemand } from './acids.js';

type Fats = ReadonlyMap<string, FatFacts>;

/** What one mole of alkali weighs, g: pure, and as weighed, which is the pure mass divided by the purity. */
export interface AlkaliPerMole {
  readonly pureNaohG: number;
  readonly pureKohG: number;
  readonly naohG: number;
  readonly kohG: number;
}

/** The KOH share is one of moles. Flakes of 97 % need more of them, never less. */
export function alkaliPerMole(recipe: WrittenRecipe): AlkaliPerMole {
  const kohShare = (recipe.kohSharePercent ?? 0) / 100;
  const pureNaohG = (1 - kohShare) * molarMass.naoh;
  const pureKohG = kohShare * molarMass.koh;
  return {
    pureNaohG,
    pureKohG,
    naohG: pureNaohG / (recipe.naohPurityPercent / 100),
    kohG: pureKohG / ((recipe.kohPurityPercent ?? 100) / 100),
  };
}

/** Alkali for the fats, less the superfat, and for the acids, mol per g of fats; what liquids take is not in it. */
export function demandBesidesLiquids(recipe: WrittenRecipe, fats: Fats): number {
  const forFats = (saponificationPerFat(recipe, fats, 'used') / molarMass.koh) * keptShare(recipe);
  return forFats + acidDemand(recipe.acids);
}

/** The share of the alkali for all fats that is given. */
export function keptShare({ superfatPercent }: WrittenRecipe): number {
  return 1 - superfatPercent / 100;
}

/** g of KOH for one gram of fats. */
export function saponificationPerFat(
  recipe: WrittenRecipe,
  fats: Fats,
  end: 'low' | 'used' | 'high',
): number {
  return fatShares(recipe, fats).reduce(
    (sum, { facts, share }) => sum + (share * facts.saponificationMgKohPerG[end]) / 1000,
    0,
  );
}
