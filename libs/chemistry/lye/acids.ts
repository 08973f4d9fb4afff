import { molarMassOf } from '../fats/molar-mass.js';

/** An acid that takes alkali for itself before any fat does. */
interface Acid {
  readonly title: string;
  readonly molarMass: number;
  /** Protons that the alkali of a batter takes, all of them. */
  readonly protons: number;
}

/** Formulas: any textbook. Citric acid is sold with and without its water of crystallisation. */
const table = {
  'citric-acid': {
    title: 'Citric acid, anhydrous',
    molarMass: molarMassOf({ C: 6, H: 8, O: 7 }),
    protons: 3,
  },
  'citric-acid-monohydrate': {
    title: 'Citric acid monohydrate',
    molarMass: molarMassOf({ C: 6, H: 10, O: 8 }),
    protons: 3,
  },
  'lactic-acid': { title: 'Lactic acid', molarMass: molarMassOf({ C: 3, H: 6, O: 3 }), protons: 1 },
  'acetic-acid': { title: 'Acetic acid (vinegar)', molarMass: molarMassOf({ C: 2, H: 4, O: 2 }), protons: 1 },
} as const satisfies Record<string, Acid>;

export type AcidName = keyof typeof table;

export interface AcidShare {
  readonly acid: AcidName;
  /** Of the fats, as weighed. */
  readonly percent: number;
  /** Acid in what is weighed: 5 for a vinegar, 100 for crystals. */
  readonly strengthPercent: number;
}

export const acids: Readonly<Record<AcidName, Acid>> = table;

/**
 * Alkali that the acids of a recipe take up, in moles per gram of fats: Σ share · strength · protons / M.
 * They are neutralised in full and first, so this comes on top of what the fats need, superfat or not.
 */
export function acidDemand(shares: readonly AcidShare[] = []): number {
  return shares.reduce((sum, { acid, percent, strengthPercent }) => {
    const { molarMass, protons } = acids[acid];
    return sum + ((percent / 100) * (strengthPercent / 100) * protons) / molarMass;
  }, 0);
}
