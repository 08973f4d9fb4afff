import { describe, expect, it } from 'vitest';
import { massOn } from './drying-curve.js';
import { mostLikely, moved } from './most-likely.js';
import { curveOf, evidenceOf, posterior, type Unknowns } from './posterior.js';

const weighIns = [
  { days: 0, massG: 1 },
  { days: 7, massG: 0.951 },
  { days: 7, massG: 0.949 },
  { days: 21, massG: 0.915 },
];
const evidence = evidenceOf(weighIns, 0.2, 0.002);

describe('the most likely unknowns', () => {
  it('are where the posterior is highest: no point of a grid is higher', () => {
    const peak = mostLikely(evidence, [0, 0, 2, 0], 4);
    let lowest = Infinity;
    for (let fresh = -0.01; fresh <= 0.01; fresh += 0.005) {
      for (let loss = -2; loss <= 2.5; loss += 0.25) {
        for (let tau = 0.5; tau <= 4.5; tau += 0.25) {
          for (let beta = -2; beta <= 4; beta += 0.5)
            lowest = Math.min(lowest, posterior(evidence, [fresh, loss, tau, beta]).value);
        }
      }
    }
    expect(lowest).toBeGreaterThanOrEqual(peak.value);
    // The grid comes within two standard deviations of it, so it has looked near enough.
    expect(lowest).toBeLessThan(peak.value + 2);
  });

  it.each<[Unknowns]>([[[0.1, -3, 1, -2]], [[-0.1, 3, 4.5, 4]], [[0.05, 2, 0.5, 3]], [[0.5, 8, 7, -6]]])(
    'are at one place, wherever the climb begins: %j',
    (start) => {
      const peak = mostLikely(evidence, [0, 0, 2, 0], 4);
      mostLikely(evidence, start, 4).unknowns.forEach((unknown, j) => {
        expect(unknown).toBeCloseTo(peak.unknowns[j] ?? NaN, 3);
      });
    },
  );

  it('are those of the curve that weighings without noise lie on, when there are enough of them', () => {
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

  // A loss of 1 % in two months on good scales: there the plain step from far away leads astray, and has to be damped.
  it('are found where the plain step leads uphill', () => {
    const steady = evidenceOf([...weighIns.slice(0, 1), { days: 60, massG: 0.99 }], 0.2, 1e-5);
    const [near, far] = [mostLikely(steady, [0, 0, 2, 0], 4), mostLikely(steady, [2, 0, 2, 0], 4)];
    expect(far.value).toBeCloseTo(near.value, 6);
    far.unknowns.forEach((unknown, j) => {
      expect(unknown).toBeCloseTo(near.unknowns[j] ?? NaN, 2);
    });
  });

  it('are found in a dozen steps or so, as a fit asks for them a thousand times', () => {
    for (const start of [
      [0, 0, 2, 0],
      [0.5, 8, 7, -6],
      [-2, -5, 8, 0],
    ] satisfies Unknowns[]) {
      let looks = 0;
      const counted = {
        ...evidence,
        get weighIns() {
          looks += 1;
          return weighIns;
        },
      };
      mostLikely(counted, start, 4);
      expect(looks).toBeLessThan(16);
    }
  });

  it('are left where they began when no step leads down, however short', () => {
    let looks = 0;
    const worseElsewhere = {
      ...evidence,
      get weighIns() {
        looks += 1;
        return looks === 1 ? weighIns : weighIns.map(({ days }) => ({ days, massG: 2 }));
      },
    };
    const start: Unknowns = [0.01, 0.2, 2.5, 1];
    expect(mostLikely(worseElsewhere, start, 4).unknowns).toEqual(start);
    expect(looks).toBeLessThan(25);
  });

  it.each([1, 2, 3, 4])('with %d of them free leave the others, and no slope along the free ones', (free) => {
    const start: Unknowns = [0.02, 0.2, 2.2, 0.4];
    const peak = mostLikely(evidence, start, free);
    const { gradient, curvature, value, noise } = posterior(evidence, peak.unknowns);
    expect(peak.unknowns.slice(free)).toEqual(start.slice(free));
    // A slope that is left, over the bend there, is how far the peak still is: in deviations, less than 1 in 10,000.
    for (let j = 0; j < free; j += 1) {
      const bend = curvature[j]?.[j] ?? NaN;
      expect(Math.abs(gradient[j] ?? NaN) / Math.sqrt(bend)).toBeLessThan(1e-3);
    }
    expect({ value: peak.value, noise: peak.noise }).toEqual({ value, noise });
    // L Lᵀ is the bend along the free ones.
    expect(peak.lower.map((row) => row.length)).toEqual(Array.from({ length: free }, (_, i) => i + 1));
    for (const [i, row] of peak.lower.entries()) {
      for (const [j, other] of peak.lower.entries()) {
        const product = row.reduce((sum, each, k) => sum + each * (other[k] ?? 0), 0);
        expect(product / (curvature[i]?.[j] ?? NaN)).toBeCloseTo(1, 9);
      }
    }
  });

  it('move by a step along as many as it has', () => {
    expect(moved([1, 2, 3, 4], [])).toEqual([1, 2, 3, 4]);
    expect(moved([1, 2, 3, 4], [10, 20])).toEqual([11, 22, 3, 4]);
    expect(moved([1, 2, 3, 4], [10, 20, 30, 40])).toEqual([11, 22, 33, 44]);
  });
});
