import { requireThat } from './guards.js';

/**
 * Whether a chance of falling short is small enough for a certainty. A certainty met exactly counts as met: the
 * batch sized for 24 pieces covers 24, whatever the last digit of either says.
 * @param chance of falling short, 0 to 1
 * @param certainty above 0 and below 1
 * @throws RangeError for a certainty out of range: what is normally distributed is never certain
 */
export function isSureEnough(chance: number, certainty: number): boolean {
  requireCertainty(certainty);
  return chance <= (1 - certainty) * (1 + ROUNDING);
}

/** @throws RangeError for a certainty that is not above 0 and below 1 */
export function requireCertainty(certainty: number): void {
  requireThat(certainty > 0 && certainty < 1, 'certainty', certainty, 'above 0 and below 1');
}

/** Well above what rounding leaves in a tail, well below what anyone could notice of a chance. */
const ROUNDING = 1e-9;
