import { binomialCdf } from '#units';
import { isSureEnough } from './certainty.js';
import { requireCount, requireThat } from './guards.js';

/**
 * How many decor pieces to make so that enough survive: the smallest N with P(survivors ≥ needed) ≥ certainty,
 * each surviving with the same chance independently of the others (binomial).
 * @param needed a whole number, 0 or more
 * @param breakagePercent share that breaks or is lost before it sits, 0 to below 100 %
 * @param certainty above 0 and below 1
 * @returns a whole number, `needed` or more
 * @throws RangeError for a value out of range
 */
export function piecesWithSpares(needed: number, breakagePercent: number, certainty: number): number {
  const enough = (made: number): boolean =>
    isSureEnough(chanceOfTooFew(needed, made, breakagePercent), certainty);
  if (enough(needed)) return needed;
  let tooFew = needed;
  let plenty = 2 * needed;
  while (!enough(plenty)) {
    tooFew = plenty;
    plenty *= 2;
  }
  while (plenty - tooFew > 1) {
    const middle = Math.floor((tooFew + plenty) / 2);
    if (enough(middle)) plenty = middle;
    else tooFew = middle;
  }
  return plenty;
}

/**
 * P(survivors < needed) of `made` pieces.
 * @param needed a whole number, 0 or more
 * @param made a whole number, 0 or more
 * @param breakagePercent share that breaks or is lost before it sits, 0 to below 100 %
 * @throws RangeError for a value out of range
 */
export function chanceOfTooFew(needed: number, made: number, breakagePercent: number): number {
  requireCount('needed', needed, 0);
  requireCount('made', made, 0);
  requireThat(
    breakagePercent >= 0 && breakagePercent < 100,
    'breakagePercent',
    breakagePercent,
    '0 to below 100 %',
  );
  return binomialCdf(needed - 1, made, 1 - breakagePercent / 100);
}
