import { describe, expect, it } from 'vitest';
import { massOn } from './drying-curve.js';
import { curveOf, evidenceOf, posterior, type Evidence, type Unknowns } from './posterior.js';

const weighIns = [
  { days: 0, massG: 1 },
  { days: 7, massG: 0.951 },
  { days: 7, massG: 0.949 },
  { days: 21, massG: 0.915 },
];
const evidence = evidenceOf(weighIns, 0.2, 0.002);
const places: Unknowns[] = [
  [0.01, 0.3, 2.5, 1],
  [-0.02, -1, 3.4, -0.5],
];

/** Some unknowns with one of them shifted. */
const shifted = ([a, b, c, d]: Unknowns, j: number, by: number): Unknowns => [
  ...([a + (j === 0 ? by : 0), b + (j === 1 ? by : 0)] as const),
  ...([c + (j === 2 ? by : 0), d + (j === 3 ? by : 0)] as const),
];
/** Slope of a figure along each unknown, by central differences. */
const slopes = (at: Unknowns, figure: (unknowns: Unknowns) => number): number[] =>
  [0, 1, 2, 3].map((j) => (figure(shifted(at, j, 1e-6)) - figure(shifted(at, j, -1e-6))) / 2e-6);

describe('the posterior', () => {
  // Oracle: central differences of the value itself.
  it.each(places.map((at) => [at]))('has the slope it says at %j', (at) => {
    const { gradient } = posterior(evidence, at);
    const oracle = slopes(at, (unknowns) => posterior(evidence, unknowns).value);
    expect(gradient).toHaveLength(4);
    gradient.forEach((slope, j) => {
      expect(slope).toBeCloseTo(oracle[j] ?? NaN, 3);
    });
  });

  // Oracle: Gauss and Newton's JᵀJ/σ² with the J of central differences of the curve, and the priors' own precisions.
  it.each(places.map((at) => [at]))('bends as Gauss and Newton say at %j', (at) => {
    const { curvature, noise } = posterior(evidence, at);
    expect(curvature.map((row) => row.length)).toEqual([4, 4, 4, 4]);
    const jacobian = weighIns.map(({ days }) => slopes(at, (each) => massOn(curveOf(evidence, each), days)));
    for (const [j, row] of curvature.entries()) {
      for (const [k, bend] of row.entries()) {
        const products = jacobian.reduce((sum, of) => sum + (of[j] ?? NaN) * (of[k] ?? NaN), 0);
        const ofPrior = j === k ? 1 / (evidence.deviations[j] ?? NaN) ** 2 : 0;
        const oracle = products / noise ** 2 + ofPrior;
        expect(Math.abs(bend - oracle)).toBeLessThan(1e-5 * Math.max(1, Math.abs(oracle)));
      }
    }
  });

  it('is flat at its prior when the weighings lie on the curve of its means', () => {
    const usual = evidenceOf([], 0.2, 0.002);
    const onIt = [0, 5, 30].map((days) => ({ days, massG: massOn(curveOf(usual, usual.means), days) }));
    const { value, gradient } = posterior({ ...usual, weighIns: onIt }, usual.means);
    expect(value).toBeCloseTo(0, 12);
    for (const slope of gradient) expect(slope).toBeCloseTo(0, 9);
  });

  /**
   * By hand. What is expected of the scales, 2 g on a kilogram, counts as six readings: a = 3, b = 3 · 0.002² = 1.2e-5.
   * Two readings that are 3 g and 1 g off add S = 1e-5: value = (3 + 1) · ln(1 + 1e-5 / 2.4e-5) = 1.393228, and
   * the readings' variance is (1.2e-5 + 0.5e-5) / 4 = 4.25e-6, 2.0616 g.
   */
  it('falls with the squares of what the readings are off, and takes their noise from them', () => {
    const usual = evidenceOf([], 0.2, 0.002);
    const mass = massOn(curveOf(usual, usual.means), 9);
    const off = [0.003, -0.001].map((by) => ({ days: 9, massG: mass + by }));
    const { value, noise } = posterior({ ...usual, weighIns: off }, usual.means);
    expect(value).toBeCloseTo(1.393228, 5);
    expect(noise).toBeCloseTo(0.0020616, 6);
  });

  it('falls by half a square of each deviation from its prior, and not with the fresh mass', () => {
    const usual = evidenceOf([], 0.2, 0.002);
    const [, loss, tau, beta] = usual.deviations;
    const [, lossMean, tauMean, betaMean] = usual.means;
    const at: Unknowns = [0.7, lossMean + loss, tauMean - 2 * tau, betaMean + 3 * beta];
    expect(posterior(usual, at).value).toBeCloseTo((1 + 4 + 9) / 2, 12);
  });
});

describe('what is usual', () => {
  /** Z of the 90th percentile is 1.281552 (a table of the normal distribution). */
  const usualEnds = (of: Evidence) =>
    [-1.281552, 1.281552].map((z) => {
      const [, loss, tau, beta] = of.means;
      const [, lossDeviation, tauDeviation, betaDeviation] = of.deviations;
      return curveOf(of, [0, loss + z * lossDeviation, tau + z * tauDeviation, beta + z * betaDeviation]);
    });

  it.each([
    ['33 % lye', 0.2, 0.08, 0.15],
    ['half as much water again, and so half as much again to lose', 0.3, 0.12, 0.225],
    ['a recipe that is not known', undefined, 0.08, 0.15],
  ])('is a loss of so much for %s (common practice, no source)', (_, waterShare, low, high) => {
    const [least, most] = usualEnds(evidenceOf([], waterShare, 0.002));
    expect(1 - (least?.settledG ?? NaN)).toBeCloseTo(low, 6);
    expect(1 - (most?.settledG ?? NaN)).toBeCloseTo(high, 6);
  });

  it('is a pace of 6.5 to 30 days and a β of 0.5 to 0.9, whatever the fresh mass', () => {
    const usual = evidenceOf([], 0.2, 0.002);
    const [least, most] = usualEnds(usual);
    expect([least?.tauDays, most?.tauDays].map((tau) => tau?.toFixed(4))).toEqual(['6.5000', '30.0000']);
    expect([least?.beta, most?.beta].map((beta) => beta?.toFixed(6))).toEqual(['0.500000', '0.900000']);
    expect(usual).toMatchObject({ mostLost: 0.2, expectedNoise: 0.002, weighIns: [] });
    expect([usual.means[0], usual.deviations[0]]).toEqual([0, Infinity]);
  });

  it('bounds the loss by the water there is, and by 35 % where the recipe is not known', () => {
    const most = (waterShare?: number) =>
      1 - curveOf(evidenceOf([], waterShare, 0.002), [0, 50, 2, 0]).settledG;
    expect(most(0.25)).toBeCloseTo(0.25, 12);
    expect(most()).toBeCloseTo(0.35, 12);
  });
});
