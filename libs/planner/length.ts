import { normalCdf, normalQuantile } from '#units';
import type { Length, Truncation } from './problem.js';

/**
 * The whole minutes to reckon with for a length at a given certainty. An uncertain length is taken at the
 * quantile `certainty` as a lower bound and at `1 - certainty` as an upper bound, of the log-normal
 * conditioned on what was observed of its draw; then rounded to the side on which the promise still holds.
 * @param certainty 0.5 up to below 1
 * @param draws observations by draw name
 * @returns minutes, rounded up for `at-least`, down for `at-most`
 */
export function lengthAt(
  length: Length,
  certainty: number,
  side: 'at-least' | 'at-most',
  draws: Readonly<Record<string, Truncation>>,
): number {
  const round = side === 'at-least' ? Math.ceil : Math.floor;
  if (length.kind === 'known') return round(length.minutes);
  const seen = draws[length.draw];
  const p = side === 'at-least' ? certainty : 1 - certainty;
  const z = truncatedQuantile(p, seen?.above ?? -Infinity, seen?.below ?? Infinity);
  // A median is often an exact number of minutes; the noise of exp and log must not add one.
  return round(Number((length.median * Math.exp(length.sigma * z)).toFixed(6)));
}

/**
 * Quantile of a standard normal known to lie in (above, below):
 * Φ⁻¹(Φ(above) + p (Φ(below) − Φ(above))), reckoned in whichever tail keeps its digits.
 * @param p probability in [0, 1]
 * @returns standard deviations, always within [above, below]
 */
export function truncatedQuantile(p: number, above: number, below: number): number {
  return truncatedQuantiles(above, below)(p);
}

/** `truncatedQuantile` for many probabilities between the same bounds. */
export function truncatedQuantiles(above: number, below: number): (p: number) => number {
  if (above > 0) {
    const mirrored = truncatedQuantiles(-below, -above);
    return (p) => -mirrored(1 - p);
  }
  const low = normalCdf(above);
  const range = normalCdf(below) - low;
  return (p) => Math.min(Math.max(normalQuantile(low + p * range), above), below);
}
