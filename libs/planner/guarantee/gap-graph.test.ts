import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GapGraph } from './gap-graph.js';

const POINTS = 6;
const links = fc.array(
  fc.record({
    from: fc.nat(POINTS - 1),
    to: fc.nat(POINTS - 1),
    min: fc.option(fc.integer({ min: -9, max: 9 }), { nil: undefined }),
    max: fc.option(fc.integer({ min: -9, max: 20 }), { nil: undefined }),
  }),
  { maxLength: 12 },
);

/** Every bound that follows from the links, by Floyd and Warshall; null where they contradict each other. */
function closure(
  all: readonly { from: number; to: number; min?: number; max?: number }[],
): number[][] | null {
  const gap = Array.from({ length: POINTS }, (_, i) =>
    Array.from({ length: POINTS }, (_, j) => (i === j ? 0 : -Infinity)),
  );
  for (const { from, to, min = -Infinity, max = Infinity } of all) {
    gap[from]![to] = Math.max(gap[from]![to]!, min);
    gap[to]![from] = Math.max(gap[to]![from]!, -max);
  }
  for (let k = 0; k < POINTS; k++)
    for (let i = 0; i < POINTS; i++)
      for (let j = 0; j < POINTS; j++) gap[i]![j] = Math.max(gap[i]![j]!, gap[i]![k]! + gap[k]![j]!);
  return gap.some((row, i) => row[i]! > 0) ? null : gap;
}

describe('GapGraph', () => {
  it('tells the least gap that follows from all links but those left out', () => {
    let told = 0;
    fc.assert(
      fc.property(links, fc.array(fc.nat(11), { maxLength: 4 }), (all, out) => {
        const leftOut = new Set(out);
        const expected = closure(all.filter((_, i) => !leftOut.has(i)));
        if (expected === null) return;
        const graph = new GapGraph(POINTS, all);
        for (let i = 0; i < POINTS; i++)
          for (let j = 0; j < POINTS; j++) expect(graph.leastGap(i, j, leftOut)).toBe(expected[i]![j]);
        told++;
      }),
      { seed: 7, numRuns: 2000 },
    );
    expect(told).toBeGreaterThan(300);
  });

  it('proves nothing from links that contradict each other where it comes by them, and ends', () => {
    const graph = new GapGraph(4, [
      { from: 0, to: 1, min: 1 },
      { from: 1, to: 2, min: 5, max: 3 },
      { from: 0, to: 3, min: 4 },
    ]);
    expect(graph.leastGap(0, 3)).toBe(-Infinity);
    expect(graph.leastGap(3, 0)).toBe(-Infinity);
    expect(graph.leastGap(0, 3, new Set([1]))).toBe(4);
  });
});
