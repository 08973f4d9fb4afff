import { describe, expect, it } from 'vitest';
import { mostLikely } from './most-likely.js';
import { curveOf, evidenceOf, posterior, type Unknowns } from './posterior.js';
import { massOn } from './drying-curve.js';

const weighIns = [
  { days: 0, massG: 1 },
  { days: 7, massG: 0.951 },
  { days: 7, massG: 0.949 },
  { days: 21, massG: 0.915 },
];
const evidence = evidenceOf(weighIns, 0.2, 0.002);

describe('the posterior', () => {
  // Oracle: central differences of the value itself.
  it.each<[Unknowns]>([[[0.01, 0.3, 2.5, 1]], [[-0.02, -1, 3.4, -0.5]]])(
    'has the slope it says at %j',
    (at) => {
      const { gradient } = posterior(evidence, at);
      gradient.forEach((slope, j) => {
        const shifted = (by: number): Unknowns => [
          at[0] + (j === 0 ? by : 0),
          at[1] + (j === 1 ? by : 0),
          at[2] + (j === 2 ? by : 0),
          at[3] + (j === 3 ? by : 0),
        ];
        const difference =
          posterior(evidence, shifted(1e-6)).value - posterior(evidence, shifted(-1e-6)).value;
        expect(difference / 2e-6).toBeCloseTo(slope, 3);
      });
    },
  );

  it('is highest where it says: no point of a grid is higher', () => {
    const peak = mostLikely(evidence, [0, 0, 2, 0], 4);
    const grid = { value: Infinity, nearest: Infinity };
    for (let fresh = -0.01; fresh <= 0.01; fresh += 0.004) {
      for (let loss = -2; loss <= 2.5; loss += 0.15) {
        for (let tau = 0.5; tau <= 4.5; tau += 0.2) {
          for (let beta = -2; beta <= 4; beta += 0.3) {
            grid.value = Math.min(grid.value, posterior(evidence, [fresh, loss, tau, beta]).value);
          }
        }
      }
    }
    expect(grid.value).toBeGreaterThanOrEqual(peak.value);
    expect(grid.value).toBeLessThan(peak.value + 1);
  });

  it('peaks at one place, wherever the climb begins', () => {
    const peak = mostLikely(evidence, [0, 0, 2, 0], 4);
    for (const start of [
      [0.1, -3, 1, -2],
      [-0.1, 3, 4.5, 4],
      [0.05, 2, 0.5, 3],
    ] satisfies Unknowns[]) {
      const other = mostLikely(evidence, start, 4);
      other.unknowns.forEach((unknown, j) => {
        expect(unknown).toBeCloseTo(peak.unknowns[j] ?? NaN, 3);
      });
    }
  });

  it('goes through weighings without noise when there are enough of them', () => {
    const truth: Unknowns = [Math.log(1.03), 0.6, Math.log(11), 0.7];
    const exact = Array.from({ length: 40 }, (_, i) => ({
      days: 2 * i,
      massG: massOn(curveOf(evidence, truth), 2 * i),
    }));
    const { unknowns } = mostLikely(evidenceOf(exact, 0.2, 1e-6), [0, 0, 2, 0], 4);
    unknowns.forEach((unknown, j) => {
      expect(unknown).toBeCloseTo(truth[j] ?? NaN, 4);
    });
  });
});
