import type { OffsetPrior } from './posterior.js';
import type { RecipeEvidence } from './evidence.js';

/** Equally spaced log-offsets. */
export interface Grid {
  readonly points: Float64Array;
  readonly step: number;
}

/**
 * The log-offsets over which the posterior is integrated.
 *
 * They reach eight prior standard deviations beyond 0 and beyond every observation that pulls away from it: with
 * the shipped prior at least from −3 to 3, a twentieth to twenty times the forecast. The range follows the
 * observations, so there is no offset outside it that they could point to; what is cut off has a weight below 1e-14.
 *
 * The step is set by the narrowest thing to be integrated. Each observation, exact or censored, bends the log
 * posterior by at most 1/σ² (a truncated normal is narrower than the whole), so its standard deviation is bounded
 * from below by that of the same observations taken as exact. For a normal of standard deviation d the trapezoidal
 * rule errs by 2 exp(−2π² (d/step)²), below 1e-16 at this ratio.
 */
export function gridFor(
  recipes: readonly RecipeEvidence[],
  { workshopSigma, recipeSigma }: OffsetPrior,
): Grid {
  const margin = MARGIN_SIGMAS * Math.hypot(workshopSigma, recipeSigma);
  const reach = recipes.flatMap(pulls);
  const low = Math.min(0, ...reach) - margin;
  const high = Math.max(0, ...reach) + margin;
  const wanted = STEP_PER_SIGMA * narrowest(recipes, workshopSigma, recipeSigma);
  const step = Math.max(wanted, LEAST_STEP);
  const count = Math.ceil((high - low) / step) + 1;
  return { points: Float64Array.from({ length: count }, (_, i) => low + i * step), step };
}

const MARGIN_SIGMAS = 8;
const STEP_PER_SIGMA = 0.7;

/** Finer than any log could ask for: a thousand batches of σ 0.1 in one recipe want 0.002. */
const LEAST_STEP = 0.0005;

/** Where the observations draw the offset; a bound draws only if the forecast lies on its wrong side. */
function pulls({ precision, pull, censored }: RecipeEvidence): number[] {
  const bounds = censored.flatMap(({ above, below }) => [Math.max(above ?? 0, 0), Math.min(below ?? 0, 0)]);
  return precision > 0 ? [pull / precision, ...bounds] : bounds;
}

function narrowest(recipes: readonly RecipeEvidence[], workshopSigma: number, recipeSigma: number): number {
  const precisions = recipes.map(({ precision, censored, table }) =>
    censored.reduce((sum, { sigma }) => sum + 1 / (sigma * sigma), precision + (table?.most ?? 0)),
  );
  const workshop = precisions.reduce(
    (sum, precision) => sum + precision / (1 + recipeSigma * recipeSigma * precision),
    1 / (workshopSigma * workshopSigma),
  );
  const recipe = recipeSigma === 0 ? 0 : 1 / (recipeSigma * recipeSigma) + Math.max(...precisions);
  return 1 / Math.sqrt(Math.max(workshop, recipe));
}
