import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { Draw, medianAbove, sampleDraws } from './draws.js';
import type { Length, Problem, Truncation } from './problem.js';

const length = (draw: string): Length => ({ kind: 'uncertain', median: 60, sigma: 0.3, draw });

function problem(names: readonly [string, string], draws: Record<string, Truncation> = {}): Problem {
  const [opens, closes] = names;
  return {
    stages: ['pour', 'cut'].map((id) => ({ id, duration: 10, uses: [] })),
    lags: [
      {
        ...{ id: 'lag', from: 'pour', point: 'end', to: 'cut' },
        ...{ atLeast: length(opens), atMost: length(closes) },
      },
    ],
    ...{ holds: [], resources: [], calendars: {}, draws, from: 0, until: 1000 },
  };
}

function valuesOf(draw: Draw | undefined, count: number): number[] {
  return Array.from({ length: count }, (_, k) => draw?.at(k) ?? NaN);
}

/** The greatest distance between the distribution of some values and one that is given (Kolmogorov and Smirnov). */
function distance(values: readonly number[], cdf: (z: number) => number): number {
  const n = values.length;
  const sorted = [...values].sort((a, b) => a - b);
  return Math.max(...sorted.map((z, i) => Math.max(cdf(z) - i / n, (i + 1) / n - cdf(z))));
}

/** Of the Kolmogorov-Smirnov distance, times the root of the count: exceeded once in a thousand times (any table). */
const FAR = 1.95;

describe('a draw', () => {
  it('has one value per scenario, in whatever order they are asked for', () => {
    const counter = (): Draw => {
      let next = 0;
      return new Draw(() => next++);
    };
    expect(valuesOf(counter(), 300)).toEqual(Array.from({ length: 300 }, (_, k) => k));
    const far = counter();
    expect([far.at(200), far.at(3), far.at(64), far.at(500)]).toEqual([200, 3, 64, 500]);
  });

  it('samples no further than a little beyond what is asked for', () => {
    let sampled = 0;
    const draw = new Draw(() => sampled++);
    draw.at(0);
    expect(sampled).toBeLessThan(50);
    draw.at(70);
    expect(sampled).toBeLessThan(120);
  });
});

describe('sampled draws', () => {
  const names = ['set', 'soft'] as const;

  /** Oracle: the normal distribution of @stdlib. */
  it('are standard normal, one for each name, without relation to each other', () => {
    const draws = sampleDraws(problem(names), 7);
    expect([...draws.keys()].sort()).toEqual(['set', 'soft']);
    const [set, soft] = names.map((name) => valuesOf(draws.get(name), 10_000)) as [number[], number[]];
    for (const values of [set, soft]) {
      expect(distance(values, (z) => normalCdf(z, 0, 1)) * Math.sqrt(10_000)).toBeLessThan(FAR);
    }
    // Of independent pairs, the mean product is normal with this standard error.
    const product = set.reduce((sum, z, k) => sum + z * soft[k]!, 0) / 10_000;
    expect(Math.abs(product)).toBeLessThan(4 / Math.sqrt(10_000));
  });

  /** Of two normal variables with half their variance in common, the correlation is one half; each stays normal by itself. */
  it('go together as far as they share, and each is spread as if alone', () => {
    const shares = {
      set: [{ of: 'room', share: Math.SQRT1_2 }],
      soft: [{ of: 'room', share: Math.SQRT1_2 }],
    };
    const draws = sampleDraws({ ...problem(names), shares }, 7);
    const [set, soft] = names.map((name) => valuesOf(draws.get(name), 10_000)) as [number[], number[]];
    const product = set.reduce((sum, z, k) => sum + z * soft[k]!, 0) / 10_000;
    expect(Math.abs(product - 0.5)).toBeLessThan(4 * Math.sqrt(1.25 / 10_000));
    expect(distance(set, (z) => normalCdf(z, 0, 1))).toBeLessThan(FAR / 100);
  });

  it('that share all of themselves lie alike among what each may be', () => {
    const all = [{ of: 'room', share: 1 }];
    const seen = { set: { above: 0.5 } };
    const draws = sampleDraws({ ...problem(names, seen), shares: { set: all, soft: all } }, 7);
    const [set, soft] = names.map((name) => valuesOf(draws.get(name), 200)) as [number[], number[]];
    const upper = 1 - normalCdf(0.5, 0, 1);
    const ranks = set.map((z) => 1 - (1 - normalCdf(z, 0, 1)) / upper);
    soft.forEach((z, k) => expect(normalCdf(z, 0, 1)).toBeCloseTo(ranks[k]!, 6));
    expect(Math.min(...set)).toBeGreaterThanOrEqual(0.5);
  });

  it('are the same for the same seed and name, whatever else is drawn', () => {
    const values = (other: string, seed: number): number[] =>
      valuesOf(sampleDraws(problem(['set', other]), seed).get('set'), 20);
    expect(values('soft', 7)).toEqual(values('else', 7));
    expect(values('soft', 7)).not.toEqual(values('soft', 8));
  });

  /** Oracle: Φ between the bounds, by @stdlib, spread evenly. */
  it('lie within what was observed, as the rest of the distribution does', () => {
    const draws = sampleDraws(problem(names, { set: { above: 0.5, below: 2 }, soft: { below: -1 } }), 7);
    const phi = (z: number): number => normalCdf(z, 0, 1);
    const within = (low: number, high: number) => (z: number) => (phi(z) - phi(low)) / (phi(high) - phi(low));
    const far = FAR / Math.sqrt(5000);
    expect(distance(valuesOf(draws.get('set'), 5000), within(0.5, 2))).toBeLessThan(far);
    expect(distance(valuesOf(draws.get('soft'), 5000), within(-Infinity, -1))).toBeLessThan(far);
  });
});

describe('the median of what lies above', () => {
  /** Oracle: Φ by @stdlib; half of what lies between z and the bound lies above the median. */
  it.each([
    [-Infinity, Infinity],
    [-1, Infinity],
    [0, 1.5],
    [2.5, Infinity],
    [6, Infinity],
  ])('%d and below %d halves it', (z, below) => {
    const median = medianAbove(z, below);
    const upper = (x: number): number => normalCdf(-x, 0, 1);
    expect((upper(median) - upper(below)) / (upper(z) - upper(below))).toBeCloseTo(0.5, 6);
  });

  it('is what was reached, where hardly anything lies above', () => {
    expect(medianAbove(8, Infinity)).toBe(8);
  });
});
