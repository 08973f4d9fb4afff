import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coolingForecast, fatsCooling, lyeCooling } from './cooling.js';
import { dissolvingHeatJPerG, freshLyeC } from './lye-heat.js';

describe('the heat of fresh lye', () => {
  /**
   * Integral heats of solution of NaOH at 25 °C, kJ/mol, as another collection of handbook values has them (from memory, so
   * within half a per cent): 42.5 in 10, 37.8 in 5 and 28.9 in 3 moles of water.
   */
  it.each([
    [18.2, 42.5],
    [30.7, 37.8],
    [42.5, 28.9],
  ])('agrees with published heats of solution at %d %%', (percent, kJPerMol) => {
    const perMol = (dissolvingHeatJPerG(percent) * 39.997) / (percent / 100) / 1000;
    expect(Math.abs(perMol / kJPerMol - 1)).toBeLessThan(0.005);
  });

  /** 36 %: n = 3.947 mol water, 34.14 kJ/mol, 307 J/g, c 3.472: 88.5 K if nothing were lost, 70.8 K with a fifth gone. */
  it('brings lye of 36 % near 90 °C, as makers find it', () => {
    expect(dissolvingHeatJPerG(36)).toBeCloseTo(307.2, 0);
    expect(freshLyeC(36, 20)).toBeCloseTo(90.8, 0);
  });
});

const lye = { massG: 300, lyePercent: 36, batterTemperatureC: 29, roomTemperatureC: 20 };

describe('cooling', () => {
  /** 70 min · ln((90.8 − 20) / (29 − 20)) = 70 · 2.063 = 144 min. */
  it('takes what Newton’s law says', () => {
    expect(coolingForecast('lye-cool', lyeCooling(lye)).medianMin).toBeCloseTo(144.4, 0);
    // Eight times the mass: twice the time.
    const eight = coolingForecast('lye-cool', lyeCooling({ ...lye, massG: 2400 }));
    expect(eight.medianMin).toBeCloseTo(288.7, 0);
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
