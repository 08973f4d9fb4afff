import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { panned, showing, timeStep, zoomed } from './view.js';

const HOUR = 3_600_000;
const whole = { from: 0, to: 1000 * HOUR };
const views = fc
  .tuple(fc.double({ min: 0, max: 900, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true }))
  .map(([from, length]) => ({ from: from * HOUR, to: (from + length) * HOUR }));

describe('a view', () => {
  it('never leaves the whole, however it is moved', () => {
    fc.assert(
      fc.property(
        views,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        (view, factor, share) => {
          for (const next of [zoomed(view, factor, view.from, whole), panned(view, share, whole)]) {
            expect(next.from).toBeGreaterThanOrEqual(whole.from);
            expect(next.to).toBeLessThanOrEqual(whole.to + 1e-3);
            expect(next.to).toBeGreaterThan(next.from);
          }
        },
      ),
    );
  });

  it('keeps what is under the pointer under the pointer', () => {
    const next = zoomed({ from: 100 * HOUR, to: 200 * HOUR }, 0.5, 125 * HOUR, whole);
    expect((125 * HOUR - next.from) / (next.to - next.from)).toBeCloseTo(0.25, 9);
  });

  it('goes from weeks to minutes and no further', () => {
    const closest = zoomed({ from: 0, to: HOUR }, 0.0001, 0, whole);
    expect(closest.to - closest.from).toBe(20 * 60_000);
    expect(zoomed({ from: 0, to: HOUR }, 1e9, 0, whole)).toEqual(whole);
  });

  it('moves only for what it does not show', () => {
    const view = { from: 10 * HOUR, to: 20 * HOUR };
    expect(showing(view, 15 * HOUR, whole)).toBe(view);
    expect(showing(view, 50 * HOUR, whole)).toEqual({ from: 45 * HOUR, to: 55 * HOUR });
  });
});

it('writes as many times as have room', () => {
  const day = { from: 0, to: 24 * HOUR };
  expect(timeStep(day, 1200)).toBe(60);
  expect(timeStep(day, 300)).toBe(360);
  expect(timeStep({ from: 0, to: 30 * 24 * HOUR }, 600)).toBeUndefined();
});
