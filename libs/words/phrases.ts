/** Bits of sentences that many messages share, with numbers that are written already. */
export interface Phrases {
  /** A probability as a count, rounded to what is known: `about 6 in 10`, `over 99 in 100`. @param probability 0 to 1 */
  readonly odds: (probability: number) => string;
  /** `low to high`. */
  readonly range: (low: string, high: string) => string;
  /** A title that a person gave, in the marks of the language. */
  readonly quoted: (title: string) => string;
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
