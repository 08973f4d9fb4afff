import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lyeDensity } from '#chemistry';

fc.configureGlobal({ seed: 1 });

const strength = fc.double({ min: 16, max: 49, noNaN: true });
const heat = fc.double({ min: 20, max: 79, noNaN: true });

describe('lyeDensity', () => {
  it('rises with strength and falls with heat', () => {
    fc.assert(
      fc.property(strength, heat, fc.double({ min: 0.01, max: 1, noNaN: true }), (c, t, by) => {
        expect(lyeDensity(c + by, t)).toBeGreaterThan(lyeDensity(c, t));
        expect(lyeDensity(c, t + by)).toBeLessThan(lyeDensity(c, t));
      }),
    );
  });

  it.each([
    [15.9, 20],
    [50.1, 20],
    [33, 19.9],
    [33, 80.1],
    [NaN, 20],
    [33, NaN],
  ])('refuses %d %% at %d °C', (c, t) => {
    expect(() => lyeDensity(c, t)).toThrow(RangeError);
  });
});
