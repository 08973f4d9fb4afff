/** The same pieces on the scales, once. */
export interface WeighIn {
  /** Days since unmoulding, 0 or more, fractions welcome. */
  readonly days: number;
  /** Mass of all pieces weighed, above 0, g. */
  readonly massG: number;
}

/** A workshop's rule for “cured by weight”. */
export interface CureRule {
  /** The loss over a week at which a lot counts as cured, in percent of its mass; above 0. */
  readonly lossPercentPerWeek: number;
}

/** Settled is what loses less than about 1 % a week: common practice, no source. */
export const usualCureRule: CureRule = { lossPercentPerWeek: 1 };

export const DAYS_PER_WEEK = 7;

/** @throws RangeError for a rule that no lot, or every lot, could meet at once */
export function allowedShare({ lossPercentPerWeek }: CureRule): number {
  if (!(lossPercentPerWeek > 0 && lossPercentPerWeek < 100)) {
    throw new RangeError(
      `lossPercentPerWeek is ${String(lossPercentPerWeek)}; accepted: above 0 and below 100 %`,
    );
  }
  return lossPercentPerWeek / 100;
}
