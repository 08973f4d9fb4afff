import type { Forecast, Reason } from './forecast.js';
import type { LogNormal } from './engine/log-normal.js';
import type { Offset } from './lessons/posterior.js';

/** An offset as it is applied to a forecast, where it has to give a reason. */
export interface ReasonedOffset extends Offset {
  /** Why; its factor is put to exp(mean). */
  readonly reason: Reason;
}

/**
 * A forecast with what a log has taught, in place of what a forecast without any log must allow for.
 *
 *     median' = median · exp(mean)    σ'² = σ_batch² + sd²
 *
 * @param forecast one without an offset: offsets of two levels are summed beforehand, not applied in turn
 * @returns the reason comes last, so that the base times all factors in order is still the likely value
 * @throws RangeError when the mean is not finite or the deviation is below 0
 */
export function withOffset(forecast: Forecast, { mean, sd, reason }: ReasonedOffset): Forecast {
  if (!Number.isFinite(mean) || !(sd >= 0)) {
    throw new RangeError(`${String(mean)} ± ${String(sd)} is no offset`);
  }
  const factor = Math.exp(mean);
  return {
    ...forecast,
    medianMin: forecast.medianMin * factor,
    sigma: Math.hypot(forecast.batchSigma, sd),
    reasons: [...forecast.reasons, { ...reason, factor }],
  };
}

/**
 * A forecast for a workshop whose pace is exactly the shipped one: only batches vary. What makers say of soap in
 * general speaks of that, and not of the spread between one workshop and the next.
 */
export function ofTypicalWorkshop({ medianMin, batchSigma }: Forecast): LogNormal {
  return { medianMin, sigma: batchSigma };
}
