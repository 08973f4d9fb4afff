import { DAYS_PER_WEEK } from './weigh-in.js';

/** m(t) = m∞ + (m0 − m∞) · exp(−(t/τ)^β) */
export interface DryingCurve {
  /** m0, at unmoulding, g. */
  readonly freshG: number;
  /** m∞, when no more is lost, g; at most m0. */
  readonly settledG: number;
  /** τ: after so many days 1 − 1/e of the loss is done, whatever β. */
  readonly tauDays: number;
  /** β, above 0 and at most 1: 1 loses at a rate in step with what is left to lose, ½ starts as √t does. */
  readonly beta: number;
}

/**
 * The share of what can be lost that is still there: exp(−(t/τ)^β), the complementary distribution of W. Weibull
 * (J. Appl. Mech. 18 (1951) 293-297).
 * @param days 0 or more
 */
export function shareLeft({ tauDays, beta }: Pick<DryingCurve, 'tauDays' | 'beta'>, days: number): number {
  return Math.exp(-((days / tauDays) ** beta));
}

/** m(t) in g, `days` after unmoulding. */
export function massOn(curve: DryingCurve, days: number): number {
  return curve.settledG + (curve.freshG - curve.settledG) * shareLeft(curve, days);
}

/** The part of its mass that a lot loses in the week from `days` on. Falls with `days`, as β is at most 1. */
export function lossOfWeekFrom(curve: DryingCurve, days: number): number {
  const ofWeek = shareLeft(curve, days) - shareLeft(curve, days + DAYS_PER_WEEK);
  return ((curve.freshG - curve.settledG) * ofWeek) / massOn(curve, days);
}
