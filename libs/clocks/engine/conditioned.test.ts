import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditioned, zOf } from './conditioned.js';

fc.configureGlobal({ seed: 1843 });

describe('adding an observation', () => {
  it('keeps the tighter bound, whichever came first', () => {
    expect(conditioned({ above: -1 }, { above: 0.5 })).toEqual({ above: 0.5 });
    expect(conditioned({ above: 0.5 }, { above: -1 })).toEqual({ above: 0.5 });
    expect(conditioned({ below: 2 }, { below: 1 })).toEqual({ below: 1 });
  });

  it('narrows from both sides', () => {
    expect(conditioned({ above: -1 }, { below: 1 })).toEqual({ above: -1, below: 1 });
    expect(conditioned({}, {})).toEqual({});
  });

  it('believes the later one when the two contradict', () => {
    expect(conditioned({ below: 0 }, { above: 1 })).toEqual({ above: 1 });
    expect(conditioned({ above: 1 }, { below: 0 })).toEqual({ below: 0 });
    expect(conditioned({ above: 1, below: 2 }, { above: -1, below: 0.5 })).toEqual({ above: -1, below: 0.5 });
  });

  it('counts bounds that meet as a contradiction', () => {
    expect(conditioned({ below: 1 }, { above: 1 })).toEqual({ above: 1 });
  });

  it('refuses an observation that contradicts itself', () => {
    expect(() => conditioned({}, { above: 2, below: 1 })).toThrow(RangeError);
  });

  it('always leaves room, and always honours the later one', () => {
    const z = fc.option(fc.double({ min: -5, max: 5, noNaN: true }), { nil: undefined });
    const seen = fc.record({ above: z, below: z }).filter((t) => (t.above ?? -9) < (t.below ?? 9));
    fc.assert(
      fc.property(seen, seen, (earlier, later) => {
        const both = conditioned(earlier, later);
        expect(both.above ?? -Infinity).toBeLessThan(both.below ?? Infinity);
        expect(both.above ?? -Infinity).toBeGreaterThanOrEqual(later.above ?? -Infinity);
        expect(both.below ?? Infinity).toBeLessThanOrEqual(later.below ?? Infinity);
      }),
    );
  });
});

describe('a time in standard deviations', () => {
  /** 60 h · e^0.25 = 77.04 h lies one σ of 0.25 above a median of 60 h. */
  it('is 0 at the median and 1 at one σ above it', () => {
    const firm = { medianMin: 3600, sigma: 0.25 };
    expect(zOf(firm, 3600)).toBe(0);
    expect(zOf(firm, 3600 * Math.exp(0.25))).toBeCloseTo(1, 12);
  });

  it('tells nothing at the start, and refuses a time before it', () => {
    const firm = { medianMin: 3600, sigma: 0.25 };
    expect(zOf(firm, 0)).toBe(-Infinity);
    expect(conditioned({}, { above: zOf(firm, 0) })).toEqual({});
    expect(() => zOf(firm, -1)).toThrow(RangeError);
  });
});
