import { molarMassOf } from '../fats/molar-mass.js';
import type { AcidName, AcidShare } from '../recipe/batter-recipe.js';

/** An acid that takes alkali for itself before any fat does. */
interface Acid {
  readonly title: string;
  /** Sold in water, at a strength that only its label knows. */
  readonly sold: 'as crystals' | 'in water';
  readonly molarMass: number;
  /** Protons that the alkali of a batter takes, all of them. */
  readonly protons: number;
}

/** Formulas: any textbook. Citric acid is sold with and without its water of crystallisation. */
export const acids: Readonly<Record<AcidName, Acid>> = {
  'citric-acid': {
    title: 'Citric acid, anhydrous',
    sold: 'as crystals',
    molarMass: molarMassOf({ C: 6, H: 8, O: 7 }),
    protons: 3,
  },
  'citric-acid-monohydrate': {
    title: 'Citric acid monohydrate',
    sold: 'as crystals',
    molarMass: molarMassOf({ C: 6, H: 10, O: 8 }),
    protons: 3,
  },
  'lactic-acid': {
    title: 'Lactic acid',
    sold: 'in water',
    molarMass: molarMassOf({ C: 3, H: 6, O: 3 }),
    protons: 1,
  },
  'acetic-acid': {
    title: 'Vinegar (acetic acid)',
    sold: 'in water',
    molarMass: molarMassOf({ C: 2, H: 4, O: 2 }),
    protons: 1,
  },
};

/** Acid in what is weighed, 0 to 1. Crystals are all acid; `checkRecipe` asks for the rest. */
export function acidStrength({ strengthPercent = 100 }: AcidShare): number {
  return strengthPercent / 100;
}

/**
 * Alkali that the acids of a recipe take up, in moles per gram of fats: Σ share · strength · protons / M.
 * They are neutralised in full and first, so this comes on top of what the fats need, superfat or not.
 */
export function acidDemand(shares: readonly AcidShare[] = []): number {
  return shares.reduce((sum, share) => {
    const { molarMass, protons } = acids[share.acid];
    return sum + ((share.percent / 100) * acidStrength(share) * protons) / molarMass;
  }, 0);
}

/** Water that the acids bring, g per g of fats: all of it, or only what stands in for water of the lye. */
export function acidWater(shares: readonly AcidShare[] = [], which: 'all' | 'in-the-lye'): number {
  return shares
    .filter(({ replacesWater = false }) => which === 'all' || replacesWater)
    .reduce((sum, share) => sum + (share.percent / 100) * (1 - acidStrength(share)), 0);
}
