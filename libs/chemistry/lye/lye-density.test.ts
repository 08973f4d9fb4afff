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

  it('is told up to the edges of its table', () => {
    expect(lyeDensity(16, 20)).toBeGreaterThan(lyeDensity(16, 80));
    expect(lyeDensity(50, 80)).toBeLessThan(lyeDensity(50, 20));
    expect(lyeDensity(50, 80)).toBeGreaterThan(lyeDensity(16, 20));
  });

  it('has no steps where one row of the table hands on to the next', () => {
    for (const c of [20, 24, 28, 32, 36, 40, 44, 48]) {
      for (const t of [40, 60]) {
        expect(lyeDensity(c - 1e-9, t)).toBeCloseTo(lyeDensity(c + 1e-9, t), 8);
        expect(lyeDensity(c, t - 1e-9)).toBeCloseTo(lyeDensity(c, t + 1e-9), 8);
      }
    }
  });

  it('says in which of the two it is out of range, and what the range is', () => {
    expect(() => lyeDensity(51, 20)).toThrow('51 % NaOH; accepted: 16 to 50 % NaOH');
    expect(() => lyeDensity(33, 10)).toThrow('10 °C; accepted: 20 to 80 °C');
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
