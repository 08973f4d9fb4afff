import { studentCdf, studentPdf, studentQuantile } from '#units';
import { isSureEnough, requireCertainty } from './certainty.js';
import { requireCount, requireNotNegative, requirePositive, requireThat } from './guards.js';
import type { PieceUse } from './piece-use.js';

/** What a batch loses on its way into the pieces. */
export interface Losses {
  /** Left in bowl, bag and pipette, once per batch; 0 or more, mL. */
  readonly fixedMl: number;
  /** Standard deviation of `fixedMl` from batch to batch in percent of it, 0 to 100. */
  readonly fixedSpreadPercent: number;
  /** Share of what is poured that is cut off again, 0 to below 100 %. */
  readonly trimmingPercent: number;
}

/** What the pieces of a batch and its losses take together: meanMl + scaleMl · t, t Student's with `df`. */
export interface Demand {
  readonly meanMl: number;
  readonly scaleMl: number;
  readonly df: number;
}

/**
 * The demand of n pieces. The sum of what they take is a Student t with ν = 2α degrees of freedom, since mean and
 * spread are themselves uncertain; all pieces share the error of the mean, so it does not average out. The losses
 * are normal:
 *
 *     mean = n μ / (1 − τ) + fixed     V = sₜ² ν/(ν − 2) + (fixed · fixedSpread)²
 *     sₜ² = β/α · n (1 + n (1/κ + r²)) / (1 − τ)²
 *
 * The sum of both is taken as the t that has its variance and its fourth cumulant, 6/(df − 4) · V²:
 *
 *     df = 4 + (ν − 4) (V / (V − (fixed · fixedSpread)²))²     scale² = V (df − 2) / df
 *
 * Matching scales and degrees of freedom as Welch and Satterthwaite do for estimated variances would understate
 * the chance of running short by up to a tenth of it where losses and pieces vary alike; this is within 0.0004 of
 * the truth for chances of 0.1 and less, within 0.0013 for larger ones. The model is unbounded: it presumes a
 * demand whose scale is well under its mean, as for any spread seen at a bench.
 * @param use with a shape above 2, as all that comes from `priorUse` has
 * @param pieces a whole number, 1 or more
 * @returns mL, unrounded
 * @throws RangeError for a value out of range
 * @see Gelman et al., Bayesian Data Analysis, 3rd ed., section 3.3 (predictive distribution); Johnson, Kotz,
 *   Balakrishnan, Continuous Univariate Distributions, vol. 2 (1995), chapter 28 (moments of t)
 */
export function demandOf(use: PieceUse, pieces: number, losses: Losses): Demand {
  requireCount('pieces', pieces, 1);
  requireThat(use.shape > 2, 'shape', use.shape, 'above 2');
  requireLosses(losses);
  const kept = 1 - losses.trimmingPercent / 100;
  const freedom = 2 * use.shape;
  const together = 1 / use.pieces + use.dayRatio ** 2;
  const scaleSquared = ((use.scale / use.shape) * pieces * (1 + pieces * together)) / kept ** 2;
  const ofPieces = (scaleSquared * freedom) / (freedom - 2);
  const variance = ofPieces + ((losses.fixedMl * losses.fixedSpreadPercent) / 100) ** 2;
  const df = 4 + (freedom - 4) * (variance / ofPieces) ** 2;
  return {
    meanMl: (pieces * use.meanMl) / kept + losses.fixedMl,
    scaleMl: Math.sqrt(variance * (1 - 2 / df)),
    df,
  };
}

/**
 * P(need > batch), the chance of running short.
 * @param batchMl any number, mL
 * @throws RangeError for a batch that is not a number or a demand that `demandOf` cannot have made
 */
export function shortageChance(demand: Demand, batchMl: number): number {
  requireDemand(demand);
  return studentCdf((demand.meanMl - batchMl) / demand.scaleMl, demand.df);
}

/**
 * The batch that is enough with a given certainty: mean + scale · F⁻¹(certainty). Inverse to `shortageChance`.
 * @param certainty above 0 and below 1
 * @returns mL, never below 0
 * @throws RangeError for a certainty out of range or a demand that `demandOf` cannot have made
 */
export function batchFor(demand: Demand, certainty: number): number {
  requireDemand(demand);
  requireCertainty(certainty);
  return Math.max(0, demand.meanMl + demand.scaleMl * studentQuantile(certainty, demand.df));
}

/**
 * How many pieces a batch covers: the largest n ≤ most whose chance of running short is at most 1 − certainty;
 * 0 if not even one is covered. Found by halving, since each piece more takes a bigger batch. That presumes, as the
 * whole model does, a scale well under the mean.
 * @param batchMl 0 or more, mL
 * @param certainty above 0 and below 1
 * @param most a whole number, 0 or more
 * @throws RangeError for a value out of range
 */
export function piecesCovered(
  use: PieceUse,
  losses: Losses,
  batchMl: number,
  certainty: number,
  most: number,
): number {
  requireNotNegative('batchMl', batchMl);
  requireCertainty(certainty);
  requireCount('most', most, 0);
  let covered = 0;
  let beyond = most + 1;
  while (beyond - covered > 1) {
    const middle = Math.floor((covered + beyond) / 2);
    if (isSureEnough(shortageChance(demandOf(use, middle, losses), batchMl), certainty)) covered = middle;
    else beyond = middle;
  }
  return covered;
}

/** What is left of a batch, mL: 10th, 50th and 90th percentile, and the mean. Never below 0. */
export interface Leftover {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly mean: number;
}

/**
 * What is left of a batch when all pieces are made, nothing where it runs short. With z = (batch − mean) / scale,
 *
 *     E[max(batch − need, 0)] = scale · (z F(z) + f(z) (ν + z²) / (ν − 1))
 *
 * from ∫ t f(t) dt = −f(t) (ν + t²) / (ν − 1).
 * @param batchMl 0 or more, mL
 * @throws RangeError for a value out of range, or a demand of 1 degree of freedom or less: it has no mean
 */
export function leftover(demand: Demand, batchMl: number): Leftover {
  requireNotNegative('batchMl', batchMl);
  requireThat(demand.df > 1, 'df', demand.df, 'above 1');
  const left = (certainty: number): number => Math.max(0, batchMl - batchFor(demand, certainty));
  const { meanMl, scaleMl, df } = demand;
  const z = (batchMl - meanMl) / scaleMl;
  const mean = scaleMl * (z * studentCdf(z, df) + (studentPdf(z, df) * (1 + (z * z) / df)) / (1 - 1 / df));
  return { low: left(0.9), likely: left(0.5), high: left(0.1), mean: Math.max(0, mean) };
}

function requireLosses({ fixedMl, fixedSpreadPercent, trimmingPercent }: Losses): void {
  requireNotNegative('fixedMl', fixedMl);
  requireThat(
    fixedSpreadPercent >= 0 && fixedSpreadPercent <= 100,
    'fixedSpreadPercent',
    fixedSpreadPercent,
    '0 to 100 %',
  );
  requireThat(
    trimmingPercent >= 0 && trimmingPercent < 100,
    'trimmingPercent',
    trimmingPercent,
    '0 to below 100 %',
  );
}

function requireDemand({ meanMl, scaleMl, df }: Demand): void {
  requirePositive('meanMl', meanMl);
  requirePositive('scaleMl', scaleMl);
  requireThat(df >= 1, 'df', df, '1 or more');
}
