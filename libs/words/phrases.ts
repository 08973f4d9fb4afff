/** Bits of sentences that many messages share, with numbers that are written already. */
export interface Phrases {
  /** A probability as a count, rounded to what is known: `about 6 in 10`, `over 99 in 100`. @param probability 0 to 1 */
  readonly odds: (probability: number) => string;
  /** Two probabilities beside each other, as far apart as it takes to tell them: `9 in 10 instead of 7 in 10`. */
  readonly oddsInstead: (probability: number, before: number) => string;
  /** A number of pieces, written already: `1 piece`, `12 pieces`. */
  readonly pieces: (count: string, isOne: boolean) => string;
  /** `low to high`. */
  readonly range: (low: string, high: string) => string;
  /** A title that a person gave, in the marks of the language. */
  readonly quoted: (title: string) => string;
  /** After the title of what is made again: `attempt 2`. */
  readonly attempt: (number: string) => string;
  /** Of a start: from then on, and only just then. */
  readonly fromOn: (time: string) => string;
  readonly onlyAt: (time: string) => string;
  readonly days: (count: string, isOne: boolean) => string;
  readonly weeks: (count: string, isOne: boolean) => string;
}

/**
 * A probability as so many of ten, or of a hundred where tenths would hide it.
 * @param probability 0 to 1
 * @returns `over` 99 and `under` 1 of a hundred stand for all that lies beyond
 */
export function countedOdds(probability: number): {
  readonly count: number;
  readonly of: 10 | 100;
  readonly bound: 'about' | 'over' | 'under';
} {
  if (probability > 0.99) return { count: 99, of: 100, bound: 'over' };
  if (probability < 0.01) return { count: 1, of: 100, bound: 'under' };
  const tenths = Math.round(probability * 10);
  if (probability >= 0.15 && probability <= 0.94) return { count: tenths, of: 10, bound: 'about' };
  return { count: Math.round(probability * 100), of: 100, bound: 'about' };
}

/**
 * Two probabilities as so many of the same ten, or hundred: the fewest that tell them apart. Tenths hide what is rare or
 * nearly sure; what hundreds do not tell apart is not known apart.
 * @param a 0 to 1, like `b`
 * @returns counts from 0 to `of`; none and all are never known, so they are told as under 1 and over 99
 */
export function countedPair(
  a: number,
  b: number,
): { readonly a: number; readonly b: number; readonly of: 10 | 100 } {
  const fitsTen = [a, b].every((each) => each >= 0.15 && each <= 0.94);
  const of = fitsTen && Math.round(a * 10) !== Math.round(b * 10) ? 10 : 100;
  return { a: Math.round(a * of), b: Math.round(b * of), of };
}
