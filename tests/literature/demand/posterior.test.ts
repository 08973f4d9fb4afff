import { describe, expect, it } from 'vitest';
import { learnUse, type PieceUse, type Weighing } from '#chemistry';

describe('learning from weighings', () => {
  /**
   * P. D. Hoff, A First Course in Bayesian Statistical Methods (2009), section 5.3, midge wing lengths in mm
   * (data of Grogan and Wirth, 1981). Prior: mean 1.9, κ₀ = 1, σ₀² = 0.01, ν₀ = 1; printed posterior: κ = 10,
   * mean 1.814, ν = 10, σ² = 0.015 (printed values from memory). In our terms α = ν/2, β = ν σ²/2.
   */
  it('is the worked example of a textbook', () => {
    const lengths = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];
    const prior = { meanMl: 1.9, pieces: 1, shape: 0.5, scale: 0.005, dayRatio: 0 };
    const posterior = learnUse(
      prior,
      lengths.map((usedMl) => ({ pieces: 1, usedMl })),
    );
    expect(posterior.pieces).toBe(10);
    expect(posterior.meanMl).toBeCloseTo(1.814, 3);
    expect(2 * posterior.shape).toBe(10);
    expect(posterior.scale / posterior.shape).toBeCloseTo(0.015, 3);
  });

  /**
   * Oracle: Bayes' theorem itself, prior times likelihood summed over a grid of mean and log-variance, with groups
   * weighed together whose mean has the variance σ²/k.
   */
  it.each<[string, Weighing[]]>([
    ['one piece', [{ pieces: 1, usedMl: 23 }]],
    ['a group', [{ pieces: 12, usedMl: 12 * 21.5 }]],
    [
      'groups and single pieces',
      [
        { pieces: 24, usedMl: 24 * 19.2 },
        { pieces: 1, usedMl: 22.4 },
        { pieces: 6, usedMl: 6 * 20.5 },
      ],
    ],
  ])('of %s is Bayes’ theorem summed over a grid', (_name, weighings) => {
    const prior = { meanMl: 20, pieces: 4, shape: 5, scale: 7.2, dayRatio: 0 };
    const seen = momentsOnGrid(prior, weighings);
    const posterior = learnUse(prior, weighings);
    expect(seen.mean).toBeCloseTo(posterior.meanMl, 5);
    // Moments of the inverse gamma and of the marginal t of the mean: Gelman et al., Bayesian Data Analysis,
    // 3rd ed., appendix A.
    const variance = posterior.scale / (posterior.shape - 1);
    expect(seen.variance).toBeCloseTo(variance, 5);
    expect(seen.varianceOfMean).toBeCloseTo(variance / posterior.pieces, 5);
    expect(seen.varianceOfVariance).toBeCloseTo(variance ** 2 / (posterior.shape - 2), 2);
  });
});

interface Moments {
  readonly mean: number;
  readonly varianceOfMean: number;
  readonly variance: number;
  readonly varianceOfVariance: number;
}

function momentsOnGrid(prior: PieceUse, weighings: readonly Weighing[]): Moments {
  const sums = { weight: 0, mean: 0, meanSquare: 0, variance: 0, varianceSquare: 0 };
  for (let logVariance = -4; logVariance < 7; logVariance += 0.02) {
    const variance = Math.exp(logVariance);
    for (let mean = 5; mean < 35; mean += 0.03) {
      // The extra −ln σ² + ln σ² of the change to the logarithm cancels one power of the inverse gamma.
      let log = -prior.shape * logVariance - prior.scale / variance;
      log += normalLog(mean, prior.meanMl, variance / prior.pieces);
      for (const { pieces, usedMl } of weighings) log += normalLog(usedMl / pieces, mean, variance / pieces);
      const weight = Math.exp(log);
      sums.weight += weight;
      sums.mean += weight * mean;
      sums.meanSquare += weight * mean * mean;
      sums.variance += weight * variance;
      sums.varianceSquare += weight * variance * variance;
    }
  }
  const mean = sums.mean / sums.weight;
  const variance = sums.variance / sums.weight;
  return {
    mean,
    varianceOfMean: sums.meanSquare / sums.weight - mean ** 2,
    variance,
    varianceOfVariance: sums.varianceSquare / sums.weight - variance ** 2,
  };
}

function normalLog(x: number, mean: number, variance: number): number {
  return -((x - mean) ** 2) / (2 * variance) - Math.log(variance) / 2;
}
