import type { Offset, OffsetPrior, Posterior } from './posterior.js';
import type { RecipeEvidence } from './evidence.js';

/**
 * The posterior of a two-level normal model with known variances. With P = Σ 1/σ² and B = Σ y/σ² of a recipe,
 * w and τ the prior σ of workshop and recipe:
 *
 *     var δ_w = w² / (1 + w² Σ P/(1 + τ²P))        mean δ_w = var δ_w · Σ B/(1 + τ²P)
 *     mean s  = (mean δ_w + τ²B) / (1 + τ²P)       var s = τ²/(1 + τ²P) + var δ_w/(1 + τ²P)²
 *
 * Written with w² and τ² in the numerators, so that nothing learned leaves the prior as it is and τ may be 0.
 *
 * @param recipes exact evidence only; what is censored is not read
 * @see A. Gelman et al., Bayesian Data Analysis, 3rd ed. (2013), section 5.4, equations 5.17 and 5.20
 *   (numbers from memory)
 */
export function conjugate(
  recipes: ReadonlyMap<string, RecipeEvidence>,
  { workshopSigma, recipeSigma }: OffsetPrior,
): Posterior {
  const recipeVariance = recipeSigma * recipeSigma;
  let precision = 0;
  let pull = 0;
  for (const recipe of recipes.values()) {
    const damping = 1 + recipeVariance * recipe.precision;
    precision += recipe.precision / damping;
    pull += recipe.pull / damping;
  }
  const variance = (workshopSigma * workshopSigma) / (1 + workshopSigma * workshopSigma * precision);
  const mean = variance * pull;
  return {
    workshop: { mean, sd: Math.sqrt(variance) },
    recipe(key): Offset {
      const seen = recipes.get(key) ?? { precision: 0, pull: 0 };
      const damping = 1 + recipeVariance * seen.precision;
      return {
        mean: (mean + recipeVariance * seen.pull) / damping,
        sd: Math.sqrt(recipeVariance / damping + variance / (damping * damping)),
      };
    },
  };
}
