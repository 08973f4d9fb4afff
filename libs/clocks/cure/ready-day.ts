import type { Band } from '../engine/quantile.js';
import { lossOfWeekFrom, type DryingCurve } from './drying-curve.js';
import type { CureFit } from './fit-cure.js';
import { allowedShare, type CureRule } from './weigh-in.js';
import { weightedBand } from './weighted-band.js';

/**
 * The first day from which the loss over the coming week stays under the rule, in parts of the mass on that day.
 * @returns days since unmoulding, unrounded; 0 when that is so from the start
 * @throws RangeError for a rule of 0 % or less, or 100 % or more
 */
export function readyDay(fit: CureFit, rule: CureRule): Band {
  const allowed = allowedShare(rule);
  return weightedBand(fit.curves, (curve) => readyDayOf(curve, allowed));
}

/** A tenth of a thousandth of a day is finer than anyone weighs. */
const CLOSE_DAYS = 1e-4;

/** Found by halving: the loss of a week falls steadily, as β is at most 1. */
function readyDayOf(curve: DryingCurve, allowed: number): number {
  if (lossOfWeekFrom(curve, 0) <= allowed) return 0;
  let before = 0;
  let after = 7;
  while (lossOfWeekFrom(curve, after) > allowed) {
    before = after;
    after *= 2;
  }
  while (after - before > CLOSE_DAYS) {
    const middle = (before + after) / 2;
    if (lossOfWeekFrom(curve, middle) > allowed) before = middle;
    else after = middle;
  }
  return (before + after) / 2;
}
