import { seededRandom, studentQuantile } from '#units';
import type { DryingCurve } from './drying-curve.js';
import { mostLikely, moved } from './most-likely.js';
import { curveOf, posterior, type Evidence, type Unknowns } from './posterior.js';
import { lastDeviation, solveUpper } from './small-matrix.js';

/** A curve that the weighings allow, and how far: the weights of all add up to 1. */
export interface PlausibleCurve {
  readonly curve: DryingCurve;
  readonly weight: number;
}

/** So many β, and so many τ for each. */
const SHAPES = 64;
const PACES = 16;

/** Tails heavy enough to reach what Laplace's normal would miss. */
const DF = 5;

/**
 * Curves that stand for the posterior. Few weighings leave it a thin curved ridge, on which one normal at the peak
 * fits badly. So the unknowns are drawn one after the other, each from Laplace's approximation given those before:
 * β at even steps of probability about the peak, for each β τ about the peak given β, for each pair m0 and the loss
 * about the peak given both, at shuffled even steps. Each curve is then weighted by posterior over proposal
 * (importance sampling), which takes out what is left of the approximation. The shuffle is seeded: same weighings,
 * same curves.
 * @param peak the unknowns of highest posterior density
 * @see L. Tierney, J. B. Kadane, J. Am. Stat. Assoc. 81 (1986) 82-86; H. Rue, S. Martino, N. Chopin, J. R. Stat. Soc.
 *   B 71 (2009) 319-392 (nesting); Gelman et al., Bayesian Data Analysis, 3rd ed., section 10.4 (all from memory)
 */
export function plausibleCurves(evidence: Evidence, peak: Unknowns): PlausibleCurve[] {
  const drawn = drawAbout(evidence, peak);
  const highest = Math.max(...drawn.map(({ logWeight }) => logWeight));
  const weights = drawn.map(({ logWeight }) => Math.exp(logWeight - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return drawn.map(({ unknowns }, i) => ({
    curve: curveOf(evidence, unknowns),
    weight: (weights[i] ?? NaN) / total,
  }));
}

interface Drawn {
  readonly unknowns: Unknowns;
  readonly logWeight: number;
}

function drawAbout(evidence: Evidence, start: Unknowns): Drawn[] {
  const drawn: Drawn[] = [];
  const all = mostLikely(evidence, start, 4);
  const shapeDeviation = lastDeviation(all.lower);
  for (const [i, shape] of deviates.shapes.entries()) {
    const givenShape = mostLikely(evidence, moved(all.unknowns, [0, 0, 0, shape * shapeDeviation]), 3);
    const paceDeviation = lastDeviation(givenShape.lower);
    for (const pace of deviates.paces[i] ?? []) {
      const givenBoth = mostLikely(evidence, moved(givenShape.unknowns, [0, 0, pace * paceDeviation]), 2);
      const masses = [deviates.fresh[drawn.length] ?? NaN, deviates.loss[drawn.length] ?? NaN];
      const unknowns = moved(givenBoth.unknowns, solveUpper(givenBoth.lower, masses));
      const logProposal =
        logDensities([shape, pace, ...masses]) - Math.log(paceDeviation) + logDeterminant(givenBoth.lower);
      drawn.push({ unknowns, logWeight: -posterior(evidence, unknowns).value - logProposal });
    }
  }
  return drawn;
}

/** Fractional parts of multiples of the golden ratio: each β has its τ between those of all others. */
const offsets = Array.from({ length: SHAPES }, (_, i) => ((i + 0.5) * ((Math.sqrt(5) - 1) / 2)) % 1);

/** The steps are the same for every lot, so they are made once. */
const deviates = {
  shapes: evenSteps(SHAPES),
  paces: offsets.map((offset) => evenSteps(PACES, offset)),
  fresh: shuffled(evenSteps(SHAPES * PACES), 1),
  loss: shuffled(evenSteps(SHAPES * PACES), 2),
};

/** Student deviates, one from each of n equal shares of probability, at the same offset in each, 0 to 1. */
function evenSteps(n: number, offset = 0.5): number[] {
  return Array.from({ length: n }, (_, i) => studentQuantile((i + offset) / n, DF));
}

function shuffled(values: readonly number[], seed: number): number[] {
  const random = seededRandom(seed);
  return values
    .map((value) => ({ value, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ value }) => value);
}

function logDensities(deviates: readonly number[]): number {
  return deviates.reduce((sum, z) => sum - ((DF + 1) / 2) * Math.log1p((z * z) / DF), 0);
}

function logDeterminant(lower: readonly (readonly number[])[]): number {
  return lower.reduce((sum, row, i) => sum + Math.log(row[i] ?? NaN), 0);
}
