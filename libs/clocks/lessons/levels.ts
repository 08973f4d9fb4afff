import type { Grid } from './cells.js';

/** A recipe given the workshop's offset, for every u of the grid. */
export interface GivenWorkshop {
  /** ln ∫ N(s; u, τ²) L(s) ds. */
  readonly log: Float64Array;
  readonly mean: Float64Array;
  readonly square: Float64Array;
}

/** Less likely than this beside the likeliest, a recipe's offset is left out of sums. */
const NOTHING = 1e-14;
/** Beyond this many τ a recipe does not lie from its workshop. */
const REACH = 4.5;

/** Integrates a recipe's own offset out of its likelihood, by sums over the grid. @param tau above 0 */
export function givenWorkshop(
  { points, step }: Grid,
  logLikelihood: Float64Array,
  tau: number,
): GivenWorkshop {
  const count = points.length;
  const result = {
    log: new Float64Array(count),
    mean: new Float64Array(count),
    square: new Float64Array(count),
  };
  let top = -Infinity;
  for (const log of logLikelihood) if (log > top) top = log;
  const likelihood = logLikelihood.map((log) => Math.exp(log - top));
  const reach = Math.max(1, Math.ceil((REACH * tau) / step));
  const kernel = Float64Array.from({ length: reach + 1 }, (_, k) => Math.exp(-(((k * step) / tau) ** 2) / 2));
  let norm = kernel[0]!;
  for (let k = 1; k <= reach; k += 1) norm += 2 * kernel[k]!;
  let [from, until] = [0, count - 1];
  while (from < until && likelihood[from]! < NOTHING) from += 1;
  while (until > from && likelihood[until]! < NOTHING) until -= 1;
  for (let i = 0; i < count; i += 1) {
    let [mass, first, second] = [0, 0, 0];
    const last = Math.min(until, i + reach);
    for (let j = Math.max(from, i - reach); j <= last; j += 1) {
      const weight = kernel[Math.abs(j - i)]! * likelihood[j]!;
      const s = points[j]!;
      mass += weight;
      first += weight * s;
      second += weight * s * s;
    }
    // Where nothing of the likelihood is left the workshop does not lie either.
    result.log[i] = mass > 0 ? top + Math.log(mass / norm) : -Infinity;
    result.mean[i] = mass > 0 ? first / mass : points[i]!;
    result.square[i] = mass > 0 ? second / mass : points[i]! ** 2;
  }
  return result;
}
