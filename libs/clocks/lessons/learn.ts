import { offsetPrior } from '../offset-prior.js';
import { conjugate } from './conjugate.js';
import { integrated } from './integrated.js';
import type { Observation } from './observation.js';
import { evidenceOf, isExact, type Evidence } from './evidence.js';
import type { OffsetPrior, Posterior } from './posterior.js';

/**
 * Learns the offsets of a workshop and of its recipes for one pace.
 *
 *     y = ln(observed / forecast median) = δ_w + δ_r + ε
 *     δ_w ~ N(0, workshopSigma²)   δ_r ~ N(0, recipeSigma²)   ε ~ N(0, σ²), σ of that observation
 *
 * Exact observations alone are solved in closed form; as soon as one is censored the posterior is integrated on
 * a grid and summarised by its mean and standard deviation. Without observations it is the prior, to the last bit.
 *
 * The normal ε believes whatever it is told: one time ten times too long among twenty good ones makes every
 * later forecast about a tenth longer. A heavier tail would shrug that off, at the price of the closed form and of
 * a batch teaching more or less depending on what the others said. So what went wrong is kept out by its mishap,
 * or forgotten once it is seen, and not guessed at here.
 *
 * @param observations one per batch (see `oneOf`), in any order; forgetting one is learning without it
 * @param prior workshopSigma above 0, recipeSigma 0 or more
 * @throws RangeError for a prior or an observation outside its range
 */
export function learn(observations: readonly Observation[], prior: OffsetPrior = offsetPrior): Posterior {
  return learnFrom(evidenceOf(observations), prior);
}

/** `learn` from what the observations add up to. @throws RangeError for a prior outside its range */
export function learnFrom(recipes: Evidence, prior: OffsetPrior = offsetPrior): Posterior {
  if (!(prior.workshopSigma > 0 && prior.recipeSigma >= 0)) {
    throw new RangeError(
      `priors ${String(prior.workshopSigma)} and ${String(prior.recipeSigma)}; accepted: above 0, and 0 or more`,
    );
  }
  return [...recipes.values()].every(isExact) ? conjugate(recipes, prior) : integrated(recipes, prior);
}
