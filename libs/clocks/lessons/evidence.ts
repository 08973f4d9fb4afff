import type { Observation } from './observation.js';

/** All that the batches of one recipe say of its offset s = δ_w + δ_r. Plain data, for keeping and sending. */
export interface RecipeEvidence {
  /** How many batches, exact or censored. */
  readonly batches: number;
  /** Σ 1/σ² over the exact observations. */
  readonly precision: number;
  /** Σ y/σ² over the exact observations. */
  readonly pull: number;
  /** Observations known only to lie between two bounds. */
  readonly censored: readonly Censored[];
}

/** Lies above, below or between; a bound that is absent is none. */
export interface Censored {
  readonly above?: number | undefined;
  readonly below?: number | undefined;
  readonly sigma: number;
}

/** What is known of one pace, by recipe: all that `learnFrom` reads of the observations behind it. */
export type Evidence = ReadonlyMap<string, RecipeEvidence>;

/**
 * Sorts observations by recipe and adds up the exact ones, of which nothing but two sums matters.
 * @param before evidence that they are added to, left as it is; absent: none
 * @throws RangeError when an observation is no observation: σ not above 0, an exact time that is not finite,
 *   bounds without room between them
 */
export function evidenceOf(observations: readonly Observation[], before: Evidence = new Map()): Evidence {
  const sums = new Map<string, RecipeEvidence>(before);
  for (const observation of observations) {
    const { recipe } = observation;
    sums.set(recipe, added(sums.get(recipe) ?? nothing, observation));
  }
  return sums;
}

const nothing: RecipeEvidence = { batches: 0, precision: 0, pull: 0, censored: [] };

function added(sum: RecipeEvidence, observation: Observation): RecipeEvidence {
  const { exact, above = -Infinity, below = Infinity, sigma } = observation;
  if (!(sigma > 0 && sigma < Infinity)) throw new RangeError(`σ of ${String(sigma)}; accepted: above 0`);
  const batches = sum.batches + 1;
  if (exact === undefined) {
    if (!(above < below)) throw new RangeError(`above ${String(above)} and below ${String(below)} at once`);
    const censored = { above: observation.above, below: observation.below, sigma };
    return { ...sum, batches, censored: [...sum.censored, censored] };
  }
  if (!Number.isFinite(exact)) throw new RangeError(`an exact time with the logarithm ${String(exact)}`);
  const precision = 1 / (sigma * sigma);
  return { ...sum, batches, precision: sum.precision + precision, pull: sum.pull + exact * precision };
}
