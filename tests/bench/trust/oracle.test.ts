import { describe, expect, it } from 'vitest';
import { normalQuantile, seededRandom } from '#units';
import { judgeCell } from './judge-cells.js';
import { oracle, wellOf, type Well } from './oracle.js';
import type { Judged } from './simulated-maker.js';

describe('the oracle', () => {
  /** By hand: precisions 1/0.4² and 1/0.2² add up, so the level is 0.24 ± 0.179, and the next batch ± 0.268. */
  it('knows of times that are as good as exact what the normal distribution says', () => {
    const one = oracle(0.4, [0.2]);
    one.see({ above: 0.2999, below: 0.3001 });
    const { ratio, width } = one.judge({ level: 0, batchSigma: 0.2 });
    expect(Math.log(ratio)).toBeCloseTo(0.24, 3);
    expect(Math.log(width)).toBeCloseTo(2 * normalQuantile(0.9) * Math.hypot(0.2, Math.sqrt(0.032)), 3);
  });

  it.each([[[0.1]], [[0.4]], [[0.1, 0.25, 0.4]]])(
    'is right in eight of ten cases over all makers that it expects: batches vary by %j',
    (sigmas) => {
      const random = seededRandom(5);
      const normal = (): number => normalQuantile(random.next());
      let sum = 0;
      const makers = 200;
      for (let k = 0; k < makers; k += 1) {
        const batchSigma = sigmas[Math.floor(random.next() * sigmas.length)] ?? 0.1;
        const level = 0.4 * normal();
        const one = oracle(0.4, sigmas);
        for (let i = 0; i < 3; i += 1) {
          const ready = level + batchSigma * normal();
          const first = random.next() - 0.5;
          const above = first + Math.floor((ready - first) / 0.3) * 0.3;
          one.see(ready > first ? { above, below: above + 0.3 } : { above: -Infinity, below: first });
        }
        sum += one.judge({ level, batchSigma }).coverage;
      }
      expect(Math.abs(sum / makers - 0.8)).toBeLessThan(0.03);
    },
  );
});

const maker = (coverage: number, ratio: number, oracleCoverage: number): Judged => {
  const oracleOfBoth: Well = { coverage: oracleCoverage, ratio: 1, width: 2 };
  return {
    ...{ runs: 30, coverage, ratio, width: 2, oracle: oracleOfBoth, oracleOfBoth },
    ...{ moved: 1, widened: 1, isTold: true, tooEarlyMin: 0 },
  };
};
const bars = [
  { least: 0.75, most: 0.88 },
  { least: 0.87, most: 1.15 },
] as const;
const cellOf = (coverages: readonly number[], oracleCoverage: number) =>
  judgeCell({ name: 'one', seen: coverages.map((each) => maker(each, 1, oracleCoverage)) }, ...bars);

describe('a cell', () => {
  it.each([
    ['holds', [0.8, 0.82, 0.84], 0.8],
    ['short', [0.95, 0.951, 0.952], 0.8],
    ['maybe luck', [0.8, 0.95, 0.92], 0.8],
    ['out of reach', [0.95, 0.951, 0.952], 0.9],
    ['short', [0.6, 0.601, 0.602], 0.9],
  ] as const)('%s for coverages of %j where the oracle has %d', (verdict, coverages, known) => {
    expect(cellOf(coverages, known)?.coverage.verdict).toBe(verdict);
  });

  it('has the interval of Student’s t, worked out by hand', () => {
    // Mean 0.82, standard deviation 0.02, t of 99 % with two degrees of freedom 9.925: 9.925 · 0.02 / √3 = 0.1146.
    const coverage = cellOf([0.8, 0.82, 0.84], 0.8)?.coverage;
    expect(coverage?.from).toBeCloseTo(0.82 - 0.1146, 4);
    expect(coverage?.to).toBeCloseTo(0.82 + 0.1146, 4);
  });

  it('is not judged by a third of its makers', () => {
    const seen = [0, 1, 2].map((k) => ({ ...maker(0.8, 1, 0.8), isTold: k === 0 }));
    expect(judgeCell({ name: 'one', seen }, ...bars)).toBeUndefined();
  });
});

it('a band of 1.28 σ that is right covers four of five', () => {
  expect(wellOf(0, 0.25, 0.25).coverage).toBeCloseTo(0.8, 9);
  expect(wellOf(0.1, 0.25, 0.25).ratio).toBeCloseTo(Math.exp(0.1), 9);
});
