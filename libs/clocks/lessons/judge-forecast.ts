import { normalQuantile } from '#units';
import { offsetPrior } from '../offset-prior.js';
import { learn } from './learn.js';
import type { Observation } from './observation.js';

/**
 * Whether a time came inside the band of its forecast. `unknown`: between the looks at it lies an edge of the band, or nobody had looked
 * before it was ready.
 */
export type Verdict = 'inside' | 'earlier' | 'later' | 'unknown';

/** Share of times that are to lie inside. */
export const BAND_SHARE = 0.8;

/** The logarithm of a time, as a forecast has it before anything of the batch is seen. */
export interface LogForecast {
  readonly mean: number;
  readonly sigma: number;
}

/**
 * The forecast of a batch as far as its pace and recipe decide it, relative to the forecast without a log: what plans go by.
 * @param earlier observations of its pace, all from before the batch
 */
export function forecastFrom(
  earlier: readonly Observation[],
  { recipe, sigma, doubt }: Pick<Observation, 'recipe' | 'sigma' | 'doubt'>,
): LogForecast {
  const { batches, spread, recipe: offsetOf } = learn(earlier);
  if (batches === 0) {
    const { workshopSigma, recipeSigma } = offsetPrior;
    return { mean: 0, sigma: Math.hypot(sigma, workshopSigma, recipeSigma, doubt) };
  }
  const { mean, sd } = offsetOf(recipe, doubt);
  return { mean, sigma: Math.hypot(spread * sigma, sd) };
}

/**
 * Holds what was seen of a batch against its forecast. Looks leave a stretch in which the time lies; only where all of that is on one
 * side of the edges is it said where it came.
 */
export function judge(
  { exact, above = -Infinity, below = Infinity }: Pick<Observation, 'exact' | 'above' | 'below'>,
  { mean, sigma }: LogForecast,
): Verdict {
  const half = sigma * normalQuantile((1 + BAND_SHARE) / 2);
  const [low, high] = [mean - half, mean + half];
  const [from, to] = exact === undefined ? [above, below] : [exact, exact];
  if (from >= low && to <= high) return 'inside';
  if (to < low) return 'earlier';
  return from > high ? 'later' : 'unknown';
}
