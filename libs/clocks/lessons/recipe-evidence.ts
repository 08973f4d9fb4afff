import type { Observation } from './observation.js';

/** All that the batches of one recipe say of its offset s = δ_w + δ_r. */
export interface RecipeEvidence {
  /** Σ 1/σ² over the exact observations. */
  readonly precision: number;
  /** Σ y/σ² over the exact observations. */
  readonly pull: number;
  /** Observations known only to lie between two bounds; ∓∞ where one is missing. */
  readonly censored: readonly Censored[];
}

export interface Censored {
  readonly above: number;
  readonly below: number;
  readonly sigma: number;
}

/**
 * Sorts observations by recipe and adds up the exact ones, of which nothing but two sums matters.
 * @throws RangeError when an observation is no observation: σ not above 0, an exact time that is not finite,
 *   bounds without room between them
 */
export function byRecipe(observations: readonly Observation[]): ReadonlyMap<string, RecipeEvidence> {
  const sums = new Map<string, RecipeEvidence>();
  for (const observation of observations) {
    const { recipe } = observation;
    sums.set(recipe, added(sums.get(recipe) ?? nothing, observation));
  }
  return sums;
}

const nothing: RecipeEvidence = { precision: 0, pull: 0, censored: [] };

function added(sum: RecipeEvidence, observation: Observation): RecipeEvidence {
  const { exact, above = -Infinity, below = Infinity, sigma } = observation;
  if (!(sigma > 0 && sigma < Infinity)) throw new RangeError(`σ of ${String(sigma)}; accepted: above 0`);
  if (exact === undefined) {
    if (!(above < below)) throw new RangeError(`above ${String(above)} and below ${String(below)} at once`);
    return { ...sum, censored: [...sum.censored, { above, below, sigma }] };
  }
  if (!Number.isFinite(exact)) throw new RangeError(`an exact time with the logarithm ${String(exact)}`);
  const precision = 1 / (sigma * sigma);
  return { ...sum, precision: sum.precision + precision, pull: sum.pull + exact * precision };
}
