import { describe, expect, it } from 'vitest';
import { massOn, type DryingCurve } from './drying-curve.js';
import { mostLikely } from './most-likely.js';
import { plausibleCurves } from './plausible-curves.js';
import { evidenceOf } from './posterior.js';
import { weightedBand } from './weighted-band.js';
import type { WeighIn } from './weigh-in.js';

const curvesOf = (weighIns: readonly WeighIn[], noise = 0.002) => {
  const evidence = evidenceOf(weighIns, 0.2, noise);
  return plausibleCurves(evidence, mostLikely(evidence, evidence.means, 4).unknowns);
};
const fresh = [
  { days: 0, massG: 1 },
  { days: 0, massG: 1 },
];
const bandOf = (weighIns: readonly WeighIn[], figure: (curve: DryingCurve) => number) =>
  weightedBand(curvesOf(weighIns), figure);

describe('curves that the weighings allow', () => {
  it('are weighted to one in all, and the same for the same weighings', () => {
    const curves = curvesOf([...fresh, { days: 9, massG: 0.95 }]);
    expect(curves).toHaveLength(1024);
    expect(curves.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(Math.min(...curves.map(({ weight }) => weight))).toBeGreaterThanOrEqual(0);
    expect(curvesOf([...fresh, { days: 9, massG: 0.95 }])).toEqual(curves);
  });

  /** The priors are normal in logarithm and logit, and weighed fresh a lot has shown nothing of them. */
  it.each<[string, (curve: DryingCurve) => number, number, number, number]>([
    ['loss', ({ freshG, settledG }) => 1 - settledG / freshG, 0.08, 0.11716, 0.15],
    ['pace', ({ tauDays }) => tauDays, 6.5, Math.sqrt(6.5 * 30), 30],
    ['shape', ({ beta }) => beta, 0.5, 0.75, 0.9],
  ])(
    'are as usual in their %s, to a twentieth of the band, when only the fresh mass is known',
    (...given) => {
      const [, figure, low, likely, high] = given;
      const band = bandOf(fresh, figure);
      const near = (high - low) / 20;
      expect(Math.abs(band.low - low)).toBeLessThan(near);
      expect(Math.abs(band.likely - likely)).toBeLessThan(near);
      expect(Math.abs(band.high - high)).toBeLessThan(near);
    },
  );

  /**
   * Two readings of 1 and six readings' worth of belief in ±0.002 leave the mass x off with the density
   * (1 + 2x² / (6 · 0.002²))^−4: Student's t of 7 degrees of freedom, times 0.002 · √(3/7). Its 90th percentile is
   * 1.415 (a table of the distribution), so the band reaches 0.00185 to either side.
   */
  it('spread about the fresh mass as the scales do', () => {
    const { low, likely, high } = bandOf(fresh, ({ freshG }) => freshG);
    expect(likely).toBeCloseTo(1, 4);
    expect((1 - low) / 0.001853).toBeCloseTo(1, 1);
    expect((high - 1) / 0.001853).toBeCloseTo(1, 1);
  });

  it('lie closer together the better the scales, and about what was weighed', () => {
    const weighIns = [...fresh, { days: 10, massG: 0.945 }, { days: 20, massG: 0.925 }];
    const on10 = (noise: number) => weightedBand(curvesOf(weighIns, noise), (curve) => massOn(curve, 10));
    const [good, poor] = [on10(0.0005), on10(0.004)];
    expect(good.high - good.low).toBeLessThan((poor.high - poor.low) / 2);
    expect(Math.abs(good.likely - 0.945)).toBeLessThan(0.0005);
  });
});
