import { madeHundred, numberOf, sumOf, type Share } from './shares.js';

/** How the fats of a recipe are told: all as shares, or all as weights. */
export type AmountSort = 'percent' | 'grams';

/** What shares are turned into weights of, where the recipe says no weight of its own. */
const USUAL_G = 1000;

export function sortOf(fats: readonly Share[]): AmountSort {
  return fats.some((each) => each.grams !== undefined) ? 'grams' : 'percent';
}

/** Grams of all fats together, to a hundredth; what is no number counts as nothing. */
export function gramsOf(fats: readonly Share[]): number {
  return Math.round(fats.reduce((sum, { grams }) => sum + numberOf(grams), 0) * 100) / 100;
}

/**
 * The same fats told the other way: shares of the sum, to a tenth, or tenths of a gram of a whole.
 * @param wholeG what all shares together weigh; a kilogram unless given
 */
export function told(fats: readonly Share[], sort: AmountSort, wholeG: number = USUAL_G): Share[] {
  if (sortOf(fats) === sort) return [...fats];
  if (sort === 'percent') {
    const shares = fats.map(({ fat, grams }) => ({ fat, percent: numberOf(grams) }));
    return madeHundred(shares).map(({ fat, percent }) => named(fat, percent === 0 ? {} : { percent }));
  }
  const sum = sumOf(fats);
  return fats.map(({ fat, percent }) =>
    // An empty field keeps the sort of the others where none has a figure yet.
    named(fat, { grams: sum > 0 ? Math.round((10 * wholeG * numberOf(percent)) / sum) / 10 || '' : '' }),
  );
}

function named(fat: unknown, amount: Share): Share {
  return fat === undefined ? amount : { fat, ...amount };
}
