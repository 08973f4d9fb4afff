import type { Evidence } from '#units';
import { molarMassOf } from '../fats/molar-mass.js';
import type { LiquidAcid } from '../recipe/batter-recipe.js';

/** Acids that liquids hold, or that their acidity is titrated as; formulas: any textbook. */
const liquidAcids: Readonly<Record<LiquidAcid, { readonly molarMass: number; readonly protons: number }>> = {
  'lactic-acid': { molarMass: molarMassOf({ C: 3, H: 6, O: 3 }), protons: 1 },
  'acetic-acid': { molarMass: molarMassOf({ C: 2, H: 4, O: 2 }), protons: 1 },
  'citric-acid': { molarMass: molarMassOf({ C: 6, H: 8, O: 7 }), protons: 3 },
  'malic-acid': { molarMass: molarMassOf({ C: 4, H: 6, O: 5 }), protons: 2 },
  'tartaric-acid': { molarMass: molarMassOf({ C: 4, H: 6, O: 6 }), protons: 2 },
};

/** What 100 g of a liquid hold, g; what these leave of 100 is starch, fibre, minerals and the like. */
export interface LiquidFigures {
  readonly waterG: number;
  readonly fatG: number;
  /** Sugars of every kind, milk sugar too. */
  readonly sugarG: number;
  readonly proteinG: number;
  /** Sodium chloride. */
  readonly saltG: number;
  /** Alcohol that is there when it goes in, boiled or not. It counts within `waterG`, as water of the lye. */
  readonly alcoholG?: number;
  /** All that alkali takes, told as one acid, as titrations tell it. */
  readonly acid?: { readonly acid: LiquidAcid; readonly grams: number } | undefined;
}

/**
 * How a liquid behaves with lye, for what is told at the bench: milks and drinks scorch, alcohol boils over, an acid heats,
 * purées and ferments spoil.
 */
export type LiquidKind = 'milk' | 'plant-drink' | 'alcohol' | 'infusion' | 'puree' | 'acid' | 'brine';

/** What people are allergic to and food law names, by Regulation (EU) No 1169/2011, Annex II. */
export type LiquidAllergen = 'milk' | 'nuts' | 'gluten';

/** A liquid that is used in place of water. */
export interface LiquidFacts {
  readonly key: string;
  readonly title: string;
  /** What else it is called, in English and German. */
  readonly aliases: readonly string[];
  readonly kind: LiquidKind;
  readonly figures: LiquidFigures;
  /** How far those figures lie apart from one sort, season or brand to the next: low and high, g per 100 g. */
  readonly ranges: Readonly<
    Partial<Record<'waterG' | 'fatG' | 'sugarG' | 'acidG', readonly [number, number]>>
  >;
  /** The shipped fat that its fat is nearest to, by key; absent: it takes alkali as the recipe's own fats do. */
  readonly fat?: string;
  readonly allergens: readonly LiquidAllergen[];
  /** For the list of ingredients. */
  readonly inci: string;
  readonly evidence: {
    readonly figures: Evidence;
    readonly acid: Evidence;
    readonly inci: Evidence;
  };
}

/** Alkali that 1 g of a liquid takes for its acid, mol: grams · protons / M. */
export function acidMolesPerGram({ acid }: Pick<LiquidFigures, 'acid'>): number {
  if (acid === undefined) return 0;
  const { molarMass, protons } = liquidAcids[acid.acid];
  return ((acid.grams / 100) * protons) / molarMass;
}

/** What a liquid holds beside water, fat, sugar, protein, salt and acid, g per 100 g; below 0 where figures come to more than 100. */
export function restG({ waterG, fatG, sugarG, proteinG, saltG, acid }: LiquidFigures): number {
  return 100 - waterG - fatG - sugarG - proteinG - saltG - (acid?.grams ?? 0);
}
