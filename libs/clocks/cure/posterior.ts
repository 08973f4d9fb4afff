import { normalQuantile } from '#units';
import type { DryingCurve } from './drying-curve.js';
import * as priors from './priors.js';
import type { WeighIn } from './weigh-in.js';

/**
 * The unknowns, each free to be any number: ln m0, logit(loss share / its bound), ln τ, logit β. In this order:
 * what the weighings settle first comes first.
 */
export type Unknowns = readonly [number, number, number, number];

/** Minus the logarithm of the posterior density at some unknowns, up to a constant, and its slope and curvature. */
export interface Posterior {
  readonly value: number;
  readonly gradient: readonly number[];
  /** Gauss and Newton's curvature, which leaves out that of the curve itself and so stays positive definite. */
  readonly curvature: readonly (readonly number[])[];
  /** Standard deviation of a reading, in the unit of the masses: E[1/σ²]^(−½) given the unknowns. */
  readonly noise: number;
}

/** What the unknowns are inferred from. */
export interface Evidence {
  readonly weighIns: readonly WeighIn[];
  /** Bound of the share of m0 that can be lost. */
  readonly mostLost: number;
  /** Means and standard deviations of the unknowns' normal priors; ln m0 has none. */
  readonly means: Unknowns;
  readonly deviations: Unknowns;
  /** Standard deviation of a reading, as expected beforehand. */
  readonly expectedNoise: number;
}

/**
 * @param waterShare of the fresh mass, from the recipe: above 0, below 1; absent: not known
 * @param expectedNoise standard deviation of a reading, in the unit of the masses
 */
export function evidenceOf(
  weighIns: readonly WeighIn[],
  waterShare: number | undefined,
  expectedNoise: number,
): Evidence {
  const mostLost = waterShare ?? priors.MOST_WATER_SHARE;
  // A wetter batch has more to lose; where the recipe is not known, the usual loss is all there is to go by.
  const wetter = waterShare === undefined ? 1 : waterShare / priors.USUAL_WATER_SHARE;
  const ofBound = wetter / mostLost;
  const loss = normalFrom(priors.lossShare, (share) => logit(share * ofBound));
  const tau = normalFrom(priors.tauDays, Math.log);
  const beta = normalFrom(priors.beta, logit);
  return {
    weighIns,
    mostLost,
    means: [0, loss.mean, tau.mean, beta.mean],
    deviations: [Infinity, loss.deviation, tau.deviation, beta.deviation],
    expectedNoise,
  };
}

/** The curve that the unknowns stand for. */
export function curveOf({ mostLost }: Pick<Evidence, 'mostLost'>, unknowns: Unknowns): DryingCurve {
  const [logFresh, logitLoss, logTau, logitBeta] = unknowns;
  const freshG = Math.exp(logFresh);
  return {
    freshG,
    settledG: freshG * (1 - mostLost * logistic(logitLoss)),
    tauDays: Math.exp(logTau),
    beta: logistic(logitBeta),
  };
}

/**
 * Readings are normal about the curve with one unknown variance, whose prior is inverse gamma with shape a and
 * scale b = a · (expected noise)². With the variance integrated out, n readings with the sum of squared residuals S
 * leave
 *
 *     −ln p = (a + n/2) · ln(1 + S/2b) + ½ Σ ((θⱼ − meanⱼ)/deviationⱼ)² + constant
 *
 * @see Gelman et al., Bayesian Data Analysis, 3rd ed., sections 3.2-3.3 (from memory)
 */
export function posterior(evidence: Evidence, unknowns: Unknowns): Posterior {
  const { weighIns, means, deviations, expectedNoise } = evidence;
  const curve = curveOf(evidence, unknowns);
  const downhill = [0, 0, 0, 0];
  const products = [0, 1, 2, 3].map(() => [0, 0, 0, 0]);
  let squares = 0;
  for (const { days, massG } of weighIns) {
    const slopes = slopesOf(curve, evidence.mostLost, days);
    const residual = slopes[0] - massG;
    squares += residual * residual;
    addTo(downhill, slopes, residual);
    products.forEach((row, j) => {
      addTo(row, slopes, slopes[j] ?? NaN);
    });
  }
  const shape = (priors.NOISE_READINGS + weighIns.length) / 2;
  const scale = (priors.NOISE_READINGS / 2) * expectedNoise ** 2;
  const precision = shape / (scale + squares / 2);
  let value = shape * Math.log1p(squares / (2 * scale));
  const gradient = downhill.map((sum) => precision * sum);
  const curvature = products.map((row) => row.map((sum) => precision * sum));
  unknowns.forEach((unknown, j) => {
    const deviation = deviations[j] ?? NaN;
    const z = (unknown - (means[j] ?? NaN)) / deviation;
    value += (z * z) / 2;
    gradient[j] = (gradient[j] ?? NaN) + z / deviation;
    const row = curvature[j] ?? [];
    row[j] = (row[j] ?? NaN) + 1 / deviation ** 2;
  });
  return { value, gradient, curvature, noise: Math.sqrt(1 / precision) };
}

function addTo(sums: number[], slopes: Unknowns, factor: number): void {
  for (let j = 0; j < 4; j += 1) sums[j] = (sums[j] ?? NaN) + factor * (slopes[j] ?? NaN);
}

/** ∂m/∂θ at one day. The first, by ln m0, is m itself. */
function slopesOf(curve: DryingCurve, mostLost: number, days: number): Unknowns {
  const { freshG, settledG, tauDays, beta } = curve;
  const lost = freshG - settledG;
  const power = (days / tauDays) ** beta;
  const left = Math.exp(-power);
  // x ln x goes to 0 with x.
  const byBeta = days === 0 ? 0 : -left * power * Math.log(days / tauDays);
  return [
    settledG + lost * left,
    -lost * (1 - left) * (1 - lost / (freshG * mostLost)),
    lost * left * power * beta,
    lost * byBeta * beta * (1 - beta),
  ];
}

function normalFrom({ low, high }: priors.Belief, transform: (value: number) => number): Normal {
  const [from, to] = [transform(low), transform(high)];
  return { mean: (from + to) / 2, deviation: (to - from) / (2 * normalQuantile(0.9)) };
}

interface Normal {
  readonly mean: number;
  readonly deviation: number;
}

function logit(p: number): number {
  return Math.log(p / (1 - p));
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
