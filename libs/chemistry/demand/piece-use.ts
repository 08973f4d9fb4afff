import { requireCount, requireNotNegative, requirePositive, requireThat } from './guards.js';

/**
 * What one piece takes, as a belief that weighings sharpen. Pieces vary about a mean with a variance σ², and both
 * are known only so well (normal-inverse-gamma):
 *
 *     x | μ, σ² ~ N(μ, σ²)     μ | σ² ~ N(meanMl, σ² / pieces)     σ² ~ Inv-Gamma(shape, scale)
 *
 * The hand and the batter of a day shift all its pieces together, by r σ about μ (r is `dayRatio`). So pieces of one
 * day are worth less than pieces of many, however many they are.
 */
export interface PieceUse {
  /** Expected use of a piece, mL. */
  readonly meanMl: number;
  /** κ: how many weighed pieces the knowledge of the mean is worth; need not be whole. */
  readonly pieces: number;
  /** α: half the degrees of freedom with which the spread is known. */
  readonly shape: number;
  /** β, mL². */
  readonly scale: number;
  /** How much the mean differs from day to day, one standard deviation, as a multiple of σ. */
  readonly dayRatio: number;
}

/** What a maker expects before any was weighed. */
export interface ExpectedUse {
  /** Above 0, mL. */
  readonly meanMl: number;
  /** Standard deviation from piece to piece in percent of the mean: 0.1 to 100. */
  readonly spreadPercent: number;
  /** Standard deviation of the mean itself in percent of it, all pieces together being off: 0.1 to 100. */
  readonly meanUncertaintyPercent: number;
  /** Standard deviation of the mean from day to day in percent of it, 0 to 100; absent: 0. */
  readonly dayPercent?: number;
}

/** Pieces weighed together, once or on several days. */
export interface Weighing {
  /** A whole number, 1 or more; each time as many. */
  readonly pieces: number;
  /**
   * What ended up in all of them, without what stayed in bowl and bag and without trimmings; above 0, mL. Of several times
   * the mean.
   */
  readonly usedMl: number;
  /** On how many days that was done: a whole number; absent: 1. */
  readonly times?: number;
  /** Σ over these times of the squared distance of `usedMl` from that mean, mL²; absent: 0. */
  readonly squares?: number;
}

/**
 * The belief before any weighing:
 *
 *     κ = (spread / uncertainty)²     α = ν/2     β = α · (spread · mean)²     ν = `SPREAD_KNOWLEDGE`
 *     r = day / spread
 *
 * that is, a scaled inverse chi-square for σ² about the expected spread (Gelman et al., Bayesian Data Analysis,
 * 3rd ed., section 3.3, with α = ν/2 and β = ν σ₀²/2).
 * @throws RangeError for a value out of the ranges of `ExpectedUse`
 */
export function priorUse(expected: ExpectedUse): PieceUse {
  const { meanMl, spreadPercent, meanUncertaintyPercent, dayPercent = 0 } = expected;
  requirePositive('meanMl', meanMl);
  requirePercent('spreadPercent', spreadPercent);
  requirePercent('meanUncertaintyPercent', meanUncertaintyPercent);
  requireThat(dayPercent >= 0 && dayPercent <= 100, 'dayPercent', dayPercent, '0 to 100 %');
  const shape = SPREAD_KNOWLEDGE / 2;
  return {
    meanMl,
    pieces: (spreadPercent / meanUncertaintyPercent) ** 2,
    shape,
    scale: shape * ((meanMl * spreadPercent) / 100) ** 2,
    dayRatio: dayPercent / spreadPercent,
  };
}

/**
 * The belief after weighings. The mean of n pieces of one day, m̄, is one observation with variance
 * σ² (1/n + r²) = σ²/k, so with each weighing
 *
 *     μ ← (κ μ + k m̄) / (κ + k)     β ← β + κ k (m̄ − μ)² / (2 (κ + k))     κ ← κ + k     α ← α + 1/2
 *
 * Pieces weighed together tell as much of the mean as pieces weighed singly, but less of the spread. The order
 * does not matter, so c weighings of n pieces each are known by their mean m̄ and the sum S of the squared distances of
 * each from it:
 *
 *     μ ← (κ μ + c k m̄) / (κ + c k)     β ← β + k S / 2 + κ c k (m̄ − μ)² / (2 (κ + c k))     κ ← κ + c k     α ← α + c/2
 *
 * @throws RangeError for a weighing out of the ranges of `Weighing`
 * @see K. Murphy, Conjugate Bayesian Analysis of the Gaussian Distribution (2007), section 6
 */
export function learnUse(use: PieceUse, weighings: readonly Weighing[]): PieceUse {
  return weighings.reduce(learnOne, use);
}

/**
 * The belief in a maker's terms: `priorUse` undone. The spread is √(β/α), the uncertainty √(β/(α κ)), both in
 * percent of the mean.
 */
export function describeUse({ meanMl, pieces, shape, scale }: PieceUse): ExpectedUse {
  const spreadPercent = (100 * Math.sqrt(scale / shape)) / meanMl;
  return { meanMl, spreadPercent, meanUncertaintyPercent: spreadPercent / Math.sqrt(pieces) };
}

/**
 * Degrees of freedom with which a stated spread is taken: as if judged from eleven pieces. A choice, no source;
 * the true spread then lies between 0.7 and 1.6 times the stated one nine times out of ten.
 */
const SPREAD_KNOWLEDGE = 10;

function learnOne(use: PieceUse, weighing: Weighing): PieceUse {
  const { meanMl, pieces, shape, scale, dayRatio } = use;
  const { times = 1, squares = 0 } = weighing;
  requireCount('pieces weighed', weighing.pieces, 1);
  requirePositive('usedMl', weighing.usedMl);
  requireCount('times weighed', times, 1);
  requireNotNegative('squares', squares);
  const each = 1 / (1 / weighing.pieces + dayRatio ** 2);
  const weighed = times * each;
  const surprise = weighing.usedMl / weighing.pieces - meanMl;
  const together = pieces + weighed;
  return {
    meanMl: meanMl + (surprise * weighed) / together,
    pieces: together,
    shape: shape + times / 2,
    scale:
      scale +
      (each * squares) / (2 * weighing.pieces ** 2) +
      (pieces * weighed * surprise ** 2) / (2 * together),
    dayRatio,
  };
}

function requirePercent(what: string, percent: number): void {
  requireThat(percent >= 0.1 && percent <= 100, what, percent, '0.1 to 100 %');
}
