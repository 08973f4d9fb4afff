import { describe, expect, it } from 'vitest';
import { ribbonEdges, type RibbonEdge } from './firmness.js';

const HOUR = 3_600_000;
const band = (low: number, likely: number, high: number) => ({ low, likely, high });
const clocks = [
  { state: 'medium-trace', closes: false, now: band(6, 12, 26) },
  { state: 'holds-layer', closes: false, now: band(17, 36, 76) },
  { state: 'bonds-until', closes: true, now: band(125, 260, 545) },
  { state: 'firm', closes: false, now: band(1397, 2180, 3403) },
  { state: 'cured', closes: false, now: band(31007, 44089, 62690) },
] as const;
const begin = { lyeIn: 0, made: 0.5 * HOUR, freed: 40 * HOUR };
const edges = ribbonEdges(clocks, begin, 2000 * HOUR);

function thicknessAt({ points }: RibbonEdge, at: number): number {
  const next = points.findIndex((point) => point.at >= at);
  const [a, b] = [points[next - 1]!, points[next]!];
  return a.thickness + ((b.thickness - a.thickness) * (at - a.at)) / (b.at - a.at);
}

describe('a ribbon', () => {
  it('reaches each state at its likely time, counted from lye-in, pour or unmoulding', () => {
    const likely = edges.find(({ z }) => z === 0)!;
    const hours = likely.points.map(({ at }) => Math.round((at / HOUR) * 100) / 100);
    // 12 min; half an hour and 36 min; half an hour and 2180 min; 40 h and 44089 min; the end.
    expect(hours).toEqual([0, 0.2, 1.1, 36.83, 774.82, 2000]);
  });

  it('has the percentiles of the band as its outer edges', () => {
    const [fast, slow] = [edges[0]!, edges.at(-1)!];
    expect(fast.points[3]!.at / HOUR).toBeCloseTo(0.5 + 1397 / 60, 6);
    expect(slow.points[3]!.at / HOUR).toBeCloseTo(0.5 + 3403 / 60, 6);
  });

  it('only grows, and is nowhere thinner when faster', () => {
    for (const { points } of edges) {
      points.slice(1).forEach((point, i) => {
        expect(point.at).toBeGreaterThanOrEqual(points[i]!.at);
        expect(point.thickness).toBeGreaterThanOrEqual(points[i]!.thickness);
      });
    }
    for (let at = HOUR; at < 1500 * HOUR; at += 7 * HOUR) {
      edges.slice(1).forEach((slower, i) => {
        expect(thicknessAt(edges[i]!, at)).toBeGreaterThanOrEqual(thicknessAt(slower, at) - 1e-9);
      });
    }
  });

  it('is there from the moment the lye goes in, without any clock too', () => {
    expect(ribbonEdges([], begin, HOUR)[2]!.points.map(({ at }) => at)).toEqual([0, HOUR]);
  });
});
