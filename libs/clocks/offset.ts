import type { Forecast, Reason } from './forecast.js';
import type { LogNormal } from './engine/log-normal.js';
import type { RecipeOffset } from './lessons/posterior.js';
import { spreadsOf } from './offset-prior.js';

/** An offset as it is applied to a forecast, where it has to give a reason. */
export interface ReasonedOffset extends RecipeOffset {
  /** How many times the σ of a batch is what the rules say. */
  readonly spread: number;
  /** Why; its factor is put to exp(mean). */
  readonly reason: Reason;
}

/**
 * A forecast with what a log has taught, in place of what a forecast without any log must allow for.
 *
 *     median' = median · exp(mean)    σ'² = (spread · σ_batch)² + sd²
 *
 * @param forecast one without an offset: offsets of two levels are summed beforehand, not applied in turn
 * @returns the reason comes last, so that the base times all factors in order is still the likely value
 * @throws RangeError when the mean is not finite, the deviation is below 0, or the spread is not above it
 */
export function withOffset(
  forecast: Forecast,
  { mean, sd, sharedSd, spread, reason }: ReasonedOffset,
): Forecast {
  if (!Number.isFinite(mean) || !(sd >= 0) || !(sharedSd >= 0 && sharedSd <= sd) || !(spread > 0)) {
    throw new RangeError(
      `${String(mean)} ± ${String(sd)} (${String(sharedSd)}), × ${String(spread)} is no offset`,
    );
  }
  const factor = Math.exp(mean);
  const recipeSd = Math.sqrt(sd * sd - sharedSd * sharedSd);
  return {
    ...forecast,
    ...spreadsOf(spread * forecast.batchSigma, recipeSd, sharedSd),
    medianMin: forecast.medianMin * factor,
    reasons: [...forecast.reasons, { ...reason, factor }],
  };
}

/**
 * A forecast for a workshop whose pace is exactly the shipped one: only batches vary, and rules err. What makers say of soap
 * in general speaks of that, and not of the spread between one workshop and the next.
 */
export function ofTypicalWorkshop({ medianMin, batchSigma, ruleSigma }: Forecast): LogNormal {
  return { medianMin, sigma: Math.hypot(batchSigma, ruleSigma) };
}
