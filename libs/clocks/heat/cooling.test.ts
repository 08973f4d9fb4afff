import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coolingForecast, fatsCooling, lyeCooling } from './cooling.js';
import { dissolvingHeatJPerG, freshLyeC } from './lye-heat.js';
import { fatsForC } from './mixing.js';

describe('the heat of fresh lye', () => {
  /**
   * Integral heats of solution of NaOH at 25 °C, kJ/mol, as another collection of handbook values has them (from memory): 42.5 in 10,
   * 37.8 in 5 and 28.9 in 3 moles of water, and 42.9 in endless water, where the CRC Handbook has 44.51: 1.64 more for the same lye.
   */
  it.each([
    [18.2, 42.5 + 1.64],
    [30.7, 37.8 + 1.64],
    [42.5, 28.9 + 1.64],
  ])('agrees with published heats of solution at %d %%', (percent, kJPerMol) => {
    const perMol = (dissolvingHeatJPerG(percent) * 39.997) / (percent / 100) / 1000;
    expect(Math.abs(perMol / kJPerMol - 1)).toBeLessThan(0.005);
  });

  /** 36 %: n = 3.947 mol water, 35.78 kJ/mol, 322 J/g, c 3.472: 92.8 K if nothing were lost, 74.2 K with a fifth gone. */
  it('brings lye of 36 % near 90 °C, as makers find it', () => {
    expect(dissolvingHeatJPerG(36)).toBeCloseTo(322, 0);
    expect(freshLyeC(36, 20)).toBeCloseTo(94.2, 0);
  });
});

/**
 * Adiabatic sums: 20 °C + q / c, q from another collection of handbook values of the heat of solution of NaOH (kJ/mol in so many moles
 * of water, between its points on a straight line; from memory), raised by 1.64 as above, and c of the solution from handbooks of caustic
 * soda (from memory). 25 %: 6.66 mol, 40.99 kJ, 256 J/g, 3.60 → 91.2 °C. 33 %: 4.51 mol, 37.2 kJ, 307 J/g, 3.52 → 107.3 °C. 40 %:
 * 3.33 mol, 32.0 kJ, 320 J/g, 3.42 → 113.7 °C.
 */
describe('the heat of lye that loses none', () => {
  it.each([
    [25, 91.2],
    [33, 107.3],
    [40, 113.7],
  ])('brings lye of %d %% from 20 °C to within 2 K of published sums', (percent, sumC) => {
    expect(Math.abs(freshLyeC(percent, 20, 0, 0) - sumC)).toBeLessThan(2);
  });

  /** KOH gives off more by the mole, and its solutions hold less heat: 57.6 kJ/mol in endless water against 44.5 (Parker 1965). */
  it('is more with potash, by the mole', () => {
    const perMol = (koh: number, molar: number) => (dissolvingHeatJPerG(25, koh) * molar) / 0.25 / 1000;
    expect(perMol(100, 56.105) / perMol(0, 39.997)).toBeGreaterThan(1.2);
    expect(perMol(100, 56.105)).toBeLessThan(57.6);
    expect(freshLyeC(30, 20, 100)).toBeGreaterThan(freshLyeC(30, 20) + 8);
    expect(freshLyeC(30, 20, 50)).toBeGreaterThan(freshLyeC(30, 20));
    expect(freshLyeC(30, 20, 50)).toBeLessThan(freshLyeC(30, 20, 100));
  });
});

describe('mixing', () => {
  const make = { fatsShare: 0.7, lyeShare: 0.3, lyePercent: 33, kohSharePercent: 0 };

  /** 0.7 · 2.04 = 1.43 of fats and 0.3 · 3.51 = 1.05 of lye: lye counts for 0.425 of the mean, though it is 0.3 of the mass. */
  it('weighs lye by what heat it holds', () => {
    const fatsC = fatsForC(make, 20, 38);
    expect(fatsC).toBeCloseTo((38 - 0.4247 * 20) / 0.5753, 0);
    expect(fatsForC(make, 38, 38)).toBeCloseTo(38, 9);
    expect(fatsForC(make, 50, 38)).toBeLessThan(38);
  });
});

const lye = { massG: 300, lyePercent: 36, batterTemperatureC: 29, roomTemperatureC: 20 };

describe('cooling', () => {
  /** 70 min · ln((94.2 − 20) / (29 − 20)) = 70 · 2.109 = 147.7 min. */
  it('takes what Newton’s law says', () => {
    expect(coolingForecast('lye-cool', lyeCooling(lye)).medianMin).toBeCloseTo(147.7, 0);
    // Eight times the mass: twice the time.
    const eight = coolingForecast('lye-cool', lyeCooling({ ...lye, massG: 2400 }));
    expect(eight.medianMin).toBeCloseTo(295.3, 0);
  });

  /** Half of the fats at 60 °C, half at 20 °C: 40 °C; 50 min · ln(20 / 9) = 39.9 min. */
  it('starts for fats from what is melted and what is stirred in cold', () => {
    const fats = fatsCooling({ ...lye, massG: 600, solidPercent: 50 });
    expect(fats.startC).toBe(40);
    expect(coolingForecast('fats-cool', fats).medianMin).toBeCloseTo(39.9, 1);
  });

  it('is over at once for what is cool from the start', () => {
    const oils = fatsCooling({ ...lye, solidPercent: 0 });
    expect(oils.inBath).toBe(false);
    expect(coolingForecast('fats-cool', oils).medianMin).toBe(1);
  });

  it('needs cold water where the room is no colder than what is wanted', () => {
    expect(lyeCooling({ ...lye, batterTemperatureC: 20 })).toMatchObject({ inBath: true, aroundC: 10 });
    expect(lyeCooling({ ...lye, batterTemperatureC: 20, roomTemperatureC: 30 }).inBath).toBe(true);
    expect(lyeCooling({ ...lye, batterTemperatureC: 23 }).inBath).toBe(false);
  });

  it('comes to an end in any room, sooner for a warmer batter and a smaller mass', () => {
    const any = fc.record({
      massG: fc.double({ min: 1, max: 1e6, noNaN: true }),
      lyePercent: fc.double({ min: 20, max: 50, noNaN: true }),
      batterTemperatureC: fc.integer({ min: 20, max: 74 }),
      roomTemperatureC: fc.integer({ min: 5, max: 35 }),
    });
    fc.assert(
      fc.property(any, (inputs) => {
        const now = coolingForecast('lye-cool', lyeCooling(inputs));
        expect(now.medianMin).toBeGreaterThanOrEqual(1);
        expect(now.medianMin).toBeLessThan(60 * 24 * 10);
        expect(now.batchSigma).toBeGreaterThanOrEqual(0.35);
        expect(now.batchSigma).toBeLessThanOrEqual(1);
        const larger = coolingForecast('lye-cool', lyeCooling({ ...inputs, massG: inputs.massG * 2 }));
        expect(larger.medianMin).toBeGreaterThanOrEqual(now.medianMin);
        const target = inputs.batterTemperatureC + 1;
        const warmer = lyeCooling({ ...inputs, batterTemperatureC: target });
        if (warmer.inBath === lyeCooling(inputs).inBath)
          expect(coolingForecast('lye-cool', warmer).medianMin).toBeLessThanOrEqual(now.medianMin);
      }),
    );
  });

  it('refuses what has no mass', () => {
    for (const massG of [0, -1, NaN, Infinity])
      expect(() => lyeCooling({ ...lye, massG })).toThrow(RangeError);
  });
});
