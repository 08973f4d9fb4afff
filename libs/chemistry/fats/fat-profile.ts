import type { BatterRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts, FatTag } from './fat-facts.js';
import { fatShares } from './fat-shares.js';

/** Saturated acids whose soaps set hard. Shorter ones make soluble soap, longer ones are traces. */
const hardAcids = ['C12:0', 'C14:0', 'C16:0', 'C17:0', 'C18:0'] as const;

type Fats = ReadonlyMap<string, FatFacts>;

/**
 * Saturated fatty acids from C12:0 to C18:0 as a share of the fats: how hard and how soon the soap sets.
 * The sum over fats of share × profile; a wax has no profile and adds nothing.
 * @returns per cent, 0 to 100
 * @throws RangeError on a fat that is not in the table: check the recipe first
 */
export function hardFattyAcidsPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats): number {
  return hardAcids.reduce((sum, acid) => sum + acidPercent(recipe, fats, acid), 0);
}

/** Oleic acid (C18:1) as a share of the fats, per cent. @throws RangeError on a fat not in the table */
export function oleicPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats): number {
  return acidPercent(recipe, fats, 'C18:1');
}

/** Linoleic and linolenic acid (C18:2, C18:3) as a share of the fats, per cent. @throws RangeError on a fat not in the table */
export function polyunsaturatedPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats): number {
  return acidPercent(recipe, fats, 'C18:2') + acidPercent(recipe, fats, 'C18:3');
}

/** Share of the fats that are free fatty acids, per cent. @throws RangeError on a fat not in the table */
export function freeAcidsPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats): number {
  return percentOf(recipe, fats, ({ kind }) => kind === 'fatty-acid');
}

/** Share of the fats that are waxes which set hard in a room, per cent. @throws RangeError on a fat not in the table */
export function hardWaxPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats): number {
  return percentOf(recipe, fats, ({ kind, tags }) => kind === 'wax' && tags?.includes('soft-wax') !== true);
}

/** From this share of saturated acids on a fat is solid in a room: coconut, palm, butters, tallow. Common practice, no source. */
const SOLID_FROM_PERCENT = 40;

/**
 * Share of the fats that are solid in a room and have to be melted: those with much saturated acid, waxes and fatty acids.
 * @returns per cent, 0 to 100
 * @throws RangeError on a fat that is not in the table
 */
export function solidFatsPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats): number {
  return percentOf(
    recipe,
    fats,
    (facts) => facts.kind !== 'triglyceride' || saturatedPercent(facts) >= SOLID_FROM_PERCENT,
  );
}

function saturatedPercent({ fattyAcidsPercent }: FatFacts): number {
  return Object.entries(fattyAcidsPercent).reduce(
    (sum, [acid, percent]) => (acid.endsWith(':0') ? sum + percent : sum),
    0,
  );
}

/** Share of the fats that carry a tag, per cent. @throws RangeError on a fat not in the table */
export function fatSharePercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats, tag: FatTag): number {
  return percentOf(recipe, fats, ({ tags }) => tags?.includes(tag) === true);
}

function percentOf(
  recipe: Pick<BatterRecipe, 'fats'>,
  fats: Fats,
  counts: (facts: FatFacts) => boolean,
): number {
  return fatShares(recipe, fats)
    .filter(({ facts }) => counts(facts))
    .reduce((sum, { share }) => sum + 100 * share, 0);
}

function acidPercent(recipe: Pick<BatterRecipe, 'fats'>, fats: Fats, acid: string): number {
  return fatShares(recipe, fats).reduce(
    (sum, { facts, share }) => sum + share * (facts.fattyAcidsPercent[acid] ?? 0),
    0,
  );
}
