import type { AcceptedUnit } from './accepted.js';
import type { None } from './none.js';

/** Issues of recipes and their lye. */
export interface RecipeIssues extends RecipeLimitIssues {
  'recipe.unknown-fat': { readonly nearest: readonly string[] };
  'recipe.fat-twice': None;
  'recipe.fat-share-out-of-range': { readonly fat: string };
  'recipe.fat-mass-out-of-range': { readonly fat: string };
  /** @param problem that it has neither a share nor grams, that it has both, or grams where others have shares */
  'recipe.fat-amount-unclear': { readonly fat: string; readonly problem: 'missing' | 'twice' | 'mixed' };
  'recipe.no-fats': None;
  'recipe.shares-not-100': { readonly sum: number };
  'recipe.size-of-other-fat': { readonly fat: string };
  /** @param fatsG what all fats together come to */
  'recipe.size-out-of-range': { readonly fatsG: number };
  'recipe.fragrances-out-of-range': { readonly sum: number };
  'recipe.unknown-allergen': { readonly nearest: readonly string[] };
  'recipe.allergens-over-100': { readonly title: string; readonly sum: number };
  'recipe.water-twice': { readonly fields: readonly string[] };
  'recipe.acid-strength-missing': { readonly acid: string };
  /** Of 100 g of fats. */
  'recipe.acid-for-water': { readonly waterG: number; readonly lyeG: number };
  /** @param percent what the lye would be with all the water that colours, or acids, bring */
  'recipe.too-wet': { readonly part: string; readonly percent: number; readonly ofColours: boolean };
  'recipe.unknown-liquid': { readonly nearest: readonly string[] };
  'recipe.liquid-twice': { readonly addedTo: 'lye' | 'batter' };
  /** @param problem that it has neither a share nor grams, that it has both, or grams where the fats have shares */
  'recipe.liquid-amount-unclear': {
    readonly liquid: string;
    readonly problem: 'missing' | 'twice' | 'fats-in-shares';
  };
  'recipe.liquid-share-out-of-range': { readonly liquid: string };
  'recipe.liquid-mass-out-of-range': { readonly liquid: string };
  'recipe.liquid-figures-over-100': { readonly title: string; readonly sum: number };
  'recipe.liquids-over-100': { readonly sum: number };
  'recipe.liquids-too-sour': None;
  /** Of 100 g of fats: water in the liquids, and what the recipe asks for. */
  'recipe.liquids-over-water': { readonly broughtG: number; readonly askedG: number };
  /** Of 100 g of fats: water that the lye is dissolved in, and lye as weighed. */
  'recipe.lye-not-dissolved': { readonly waterG: number; readonly lyeG: number };
  'lye.stock-too-weak': { readonly lyePercent: number; readonly stockPercent: number };
  /** @param missingG water of 100 g of fats that stock and liquids bring beyond what the recipe asks for */
  'lye.stock-leaves-no-liquids': { readonly missingG: number };
  'lye.stock-without-naoh': None;
  'lye.koh-purity-missing': None;
  /** @param field that tells the water */
  'lye.concentration-out-of-range': { readonly percent: number; readonly field: string };
}

/** A number of a recipe outside of its limits. */
interface Limited {
  readonly found: number;
  readonly unit: AcceptedUnit;
}

export interface RecipeLimitIssues {
  'lye.superfat-out-of-range': Limited & { readonly isExcessIntended: boolean };
  'lye.purity-out-of-range': Limited & { readonly alkali: 'naoh' | 'koh' };
  'lye.stock-out-of-range': Limited;
  'recipe.koh-share-out-of-range': Limited;
  'recipe.sodium-lactate-out-of-range': Limited;
  'recipe.salt-out-of-range': Limited;
  'recipe.sugar-out-of-range': Limited;
  'recipe.fragrance-out-of-range': Limited & { readonly title: string };
  'recipe.acid-out-of-range': Limited;
  'recipe.acid-strength-out-of-range': Limited;
  'recipe.colourant-out-of-range': Limited & { readonly title: string };
  'recipe.addition-out-of-range': Limited & { readonly title: string };
  'batter.temperature-out-of-range': Limited;
}

export type RecipeLimitCode = keyof RecipeLimitIssues;

export interface BatterIssues {
  'batch.fats-out-of-range': { readonly found: number };
  'batch.volume-out-of-range': { readonly found: number };
  'titration.impossible': None;
}

/** Saponification values are in mg KOH per g. */
export interface FatIssues {
  'fat.saponification-disordered': {
    readonly title: string;
    readonly low: number;
    readonly used: number;
    readonly high: number;
    /** The figure is as small as one in g of NaOH per g. */
    readonly isAsNaoh: boolean;
  };
  'fat.unknown-fatty-acid': { readonly name: string; readonly share: number; readonly isCalled?: string };
  'fat.fatty-acids-over-100': { readonly title: string; readonly sum: number };
  'fat.density-out-of-range': { readonly title: string; readonly found: number };
  'fat.expansion-out-of-range': { readonly title: string; readonly found: number };
  'fat.iodine-disordered': { readonly title: string; readonly low: number; readonly high: number };
  'fat.unsaponifiable-disordered': { readonly title: string; readonly low: number; readonly high: number };
  'fat.wax-saponification-doubtful': {
    readonly title: string;
    readonly used: number;
    readonly most: number;
  };
  'fat.differs-from-shipped': {
    readonly title: string;
    readonly used: number;
    readonly shipped: number;
    readonly differsByPercent: number;
  };
  'fat.saponification-as-naoh': {
    readonly title: string;
    readonly used: number;
    readonly expected: number;
    readonly asKoh: number;
  };
  'fat.saponification-doubtful': { readonly title: string; readonly used: number; readonly expected: number };
  'fat.profile-incomplete': { readonly title: string; readonly sum: number };
  'fat.density-doubtful': { readonly title: string; readonly found: number; readonly expected: number };
}

export interface MouldIssues {
  'shape.measure-out-of-range': { readonly foundMm: number };
  'shape.tube-too-thick': { readonly tubeMm: number; readonly outerMm: number };
  'mould.cavity-out-of-range': { readonly holdsMl: number };
  'mould.shape-differs': { readonly statedMl: number; readonly holdsMl: number };
}
