/** A fat and its share or weight, as it stands in a form: the amount may still be a text, or missing. */
export interface Share {
  readonly fat?: unknown;
  readonly percent?: unknown;
  readonly grams?: unknown;
}

/** Shares are typed to a hundredth at most; sums of them must not show what binary fractions add. */
const HUNDREDTHS = 100;
const TENTHS_IN_ALL = 1000;

/** The shares together, in per cent; what is no number counts as nothing. */
export function sumOf(shares: readonly Share[]): number {
  const sum = shares.reduce((total, { percent }) => total + numberOf(percent), 0);
  return Math.round(sum * HUNDREDTHS) / HUNDREDTHS;
}

/** Whether each line names a fat and its amount, all shares or all weights, so that something can be reckoned with them. */
export function hasShares(shares: readonly Share[]): boolean {
  const hasAll = (amount: 'percent' | 'grams'): boolean =>
    shares.every((share) => typeof share.fat === 'string' && numberOf(share[amount]) > 0);
  return shares.length > 0 && (hasAll('percent') || hasAll('grams'));
}

/**
 * The shares stretched or shrunk alike until they make 100 %, to a tenth; what rounding leaves goes to those that
 * lost most by it (the method of largest remainders), so that none overtakes another.
 * @returns the same shares where there is nothing to stretch
 */
export function madeHundred<T extends Share>(shares: readonly T[]): T[] {
  const sum = shares.reduce((total, { percent }) => total + numberOf(percent), 0);
  if (sum <= 0) return [...shares];
  const exact = shares.map(({ percent }) => (numberOf(percent) * TENTHS_IN_ALL) / sum);
  const tenths = exact.map(Math.floor);
  const left = TENTHS_IN_ALL - tenths.reduce((total, each) => total + each, 0);
  const lost = (i: number): number => (exact[i] ?? 0) - (tenths[i] ?? 0);
  const raised = new Set([...exact.keys()].sort((a, b) => lost(b) - lost(a)).slice(0, left));
  return shares.map((share, i) => ({ ...share, percent: ((tenths[i] ?? 0) + (raised.has(i) ? 1 : 0)) / 10 }));
}

/** A number that stands in a form; 0 for what is none. */
export function numberOf(value: unknown): number {
  return typeof value === 'number' && Number.isFinite(value) ? value : 0;
}
