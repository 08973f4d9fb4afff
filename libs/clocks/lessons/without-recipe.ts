import type { Grid } from './grid.js';

/** For every workshop offset u of a grid: ln M(u) up to a constant, and mean and variance of s given u. */
export interface GivenWorkshop {
  readonly log: Float64Array;
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/**
 * Integrates a recipe's own offset out of its likelihood: M(u) = ∫ N(s; u, τ²) L(s) ds for every u of the grid.
 *
 * L is log-concave (products of normals and of interval probabilities of normals are; A. Prékopa, Acta Sci. Math.
 * 34 (1973) 335-343, from memory). So the integrand has one peak, which moves only upwards as u does, and the sum
 * is taken outwards from it until the terms no longer count.
 */
export function withoutRecipe(grid: Grid, logLikelihood: Float64Array, recipeSigma: number): GivenWorkshop {
  const { points, step } = grid;
  const count = points.length;
  const result = { log: new Float64Array(count), mean: points.slice(), variance: new Float64Array(count) };
  if (recipeSigma === 0) return { ...result, log: logLikelihood };

  const bend = (step * step) / (2 * recipeSigma * recipeSigma);
  let peak = 0;
  for (let i = 0; i < count; i += 1) {
    const term = (j: number): number => (logLikelihood[j] ?? -Infinity) - bend * (j - i) * (j - i);
    while (peak + 1 < count && term(peak + 1) >= term(peak)) peak += 1;
    const { mass, mean, variance } = sumsAround(peak, count, term);
    result.log[i] = term(peak) + Math.log(mass);
    result.mean[i] = (points[peak] ?? 0) + step * mean;
    result.variance[i] = step * step * variance;
  }
  return result;
}

/** e⁻⁴⁰ is 4e-18, below the last digit of the sum. */
const NEGLIGIBLE = -40;

/** Sum of e^term relative to the peak's, and mean and variance of the index, counted from the peak. */
function sumsAround(
  peak: number,
  count: number,
  term: (j: number) => number,
): { mass: number; mean: number; variance: number } {
  const top = term(peak);
  let mass = 0;
  let first = 0;
  let second = 0;
  const add = (j: number): boolean => {
    const log = term(j) - top;
    if (log < NEGLIGIBLE) return false;
    const weight = Math.exp(log);
    mass += weight;
    first += weight * (j - peak);
    second += weight * (j - peak) * (j - peak);
    return true;
  };
  for (let j = peak; j < count && add(j); j += 1);
  for (let j = peak - 1; j >= 0 && add(j); j -= 1);
  const mean = first / mass;
  return { mass, mean, variance: second / mass - mean * mean };
}
