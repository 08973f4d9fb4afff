import { ok, type Result } from '#units';
import type { Band } from '../engine/quantile.js';
import { checkWeighIns, type CureOptions } from './check-weigh-ins.js';
import { massOn } from './drying-curve.js';
import { mostLikely } from './most-likely.js';
import { plausibleCurves, type PlausibleCurve } from './plausible-curves.js';
import { evidenceOf, type Unknowns } from './posterior.js';
import { LEAST_NOISE, READING_NOISE } from './priors.js';
import type { WeighIn } from './weigh-in.js';
import { weightedBand } from './weighted-band.js';

/** A lot's loss of mass as its weighings tell it. */
export interface CureFit {
  /** m0, at unmoulding. */
  readonly freshG: Band;
  /** m∞, when no more is lost. */
  readonly settledG: Band;
  readonly tauDays: Band;
  readonly beta: Band;
  /** Standard deviation of a reading about the curve: scales and handling, g. */
  readonly noiseG: number;
  /** How many weighings it rests on. */
  readonly weighIns: number;
  /** Curves that the weighings allow, with weights that add up to 1; all bands are percentiles over them. */
  readonly curves: readonly PlausibleCurve[];
  /** The mass of the lot itself, without the noise of a reading, g. @param days since unmoulding, 0 or more */
  massAt(days: number): Band;
}

/**
 * Fits m(t) = m∞ + (m0 − m∞) · exp(−(t/τ)^β) to weighings of the same pieces.
 *
 * Two to four weighings settle no four unknowns, so what is usual counts too (`priors.ts`) and gives way to what is
 * weighed. The highest posterior density is found first, the bands are percentiles over curves drawn about it
 * (`plausible-curves.ts`): against the posterior summed over a grid they are good to 5 % of the band's width.
 *
 * The bands know the noise of the scales, not that the curve itself is only near the truth: a sheet that dries by
 * diffusion, weighed daily, gets bands that are too narrow, its ready day right to four days, and too low a settled
 * mass until the weight hardly changes.
 *
 * @param weighIns two or more, in any order; two on one day are welcome
 * @returns unrounded; masses scale with the masses weighed, nothing else does
 *   Issues: as `checkWeighIns`
 * @see J. Crank, The Mathematics of Diffusion, 2nd ed. 1975, section 4.3 (from memory): drying starts as √t and ends
 *   as an exponential, so β lies between ½ and 1
 */
export function fitCure(weighIns: readonly WeighIn[], options: CureOptions = {}): Result<CureFit> {
  const [issue, ...more] = checkWeighIns(weighIns, options);
  if (issue !== undefined) return { ok: false, issues: [issue, ...more] };
  // In parts of the mean mass, so that a kilogram and a piece are reckoned alike to the last digit.
  const unitG = weighIns.reduce((sum, { massG }) => sum + massG, 0) / weighIns.length;
  const scaleNoise = options.scaleSdG === undefined ? READING_NOISE : options.scaleSdG / unitG;
  const evidence = evidenceOf(
    weighIns.map(({ days, massG }) => ({ days, massG: massG / unitG })),
    options.waterShare,
    Math.hypot(scaleNoise, LEAST_NOISE),
  );
  const [, loss, tau, beta] = evidence.means;
  const start: Unknowns = [0, loss, tau, beta];
  const peak = mostLikely(evidence, start, 4);
  const curves = plausibleCurves(evidence, peak.unknowns).map(({ curve, weight }) => ({
    curve: { ...curve, freshG: curve.freshG * unitG, settledG: curve.settledG * unitG },
    weight,
  }));
  return ok({
    freshG: weightedBand(curves, ({ freshG }) => freshG),
    settledG: weightedBand(curves, ({ settledG }) => settledG),
    tauDays: weightedBand(curves, ({ tauDays }) => tauDays),
    beta: weightedBand(curves, ({ beta: shape }) => shape),
    noiseG: peak.noise * unitG,
    weighIns: weighIns.length,
    curves,
    massAt: (days) => {
      if (!(days >= 0)) throw new RangeError(`day ${String(days)} is before unmoulding`);
      return weightedBand(curves, (curve) => massOn(curve, days));
    },
  });
}
