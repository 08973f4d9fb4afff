import { describe, expect, it } from 'vitest';
import { coolingForecast } from './cooling.js';
import { meltCooling, sphereTerm } from './melt-cooling.js';

const firm = (volumeMl: number, roomTemperatureC = 20): number =>
  coolingForecast('melt-firm', meltCooling({ volumeMl, roomTemperatureC })).medianMin;

describe('a sphere that cools in air', () => {
  /** Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 5.1; from memory. */
  it.each([
    [0.01, 0.173, 1.003],
    [0.1, 0.5423, 1.0298],
    [0.5, 1.1656, 1.1441],
    [1, 1.5708, 1.2732],
    [2, 2.0288, 1.4793],
    [10, 2.8363, 1.9249],
  ])('has the root and the coefficient of the table for Bi = %d', (biot, zeta, first) => {
    const term = sphereTerm(biot);
    expect(term.zeta).toBeCloseTo(zeta, 3);
    expect(term.first).toBeCloseTo(first, 3);
  });

  /**
   * The heat equation stepped outright on shells, which knows of no series: what is warm in the middle after the time is what
   * was asked for.
   */
  it.each([10, 100, 1000])('is at its target in the middle at the time, by shells, for %d mL', (volumeMl) => {
    const [k, density, heat, transfer] = [0.35, 1050, 3677, 9];
    const radius = Math.cbrt(volumeMl * 1e-6) / 2;
    const shells = 40;
    const dr = radius / shells;
    const dt = (0.2 * dr * dr * density * heat) / k;
    let warm = Array<number>(shells).fill(60);
    for (let t = 0; t < firm(volumeMl) * 60; t += dt) {
      const before = warm;
      warm = before.map((at, i) => {
        const [inner, outer] = [i * dr, (i + 1) * dr];
        const inflow = i === 0 ? 0 : ((before[i - 1]! - at) / dr) * k * inner ** 2;
        const outflow =
          i === shells - 1 ? (at - 20) / (1 / transfer + dr / 2 / k) : ((at - before[i + 1]!) / dr) * k;
        const volume = (outer ** 3 - inner ** 3) / 3;
        return at + (dt * (inflow - outflow * outer ** 2)) / (density * heat * volume);
      });
    }
    expect(warm[0]).toBeCloseTo(30, 0);
  });
});

/** Common practice, no source, for a room of 20 °C. */
describe('cast melt-and-pour base', () => {
  it('leaves a small embed mould after half an hour or so, and a bar after one or two', () => {
    expect(firm(8)).toBeGreaterThan(15);
    expect(firm(8)).toBeLessThan(45);
    expect(firm(100)).toBeGreaterThan(50);
    expect(firm(100)).toBeLessThan(120);
  });

  it('takes hours as a loaf of a kilogram', () => {
    expect(firm(950)).toBeGreaterThan(3 * 60);
    expect(firm(950)).toBeLessThan(8 * 60);
  });

  it('takes longer in a warm room, and gets there in the warmest', () => {
    expect(firm(80, 20)).toBeGreaterThan(firm(80, 5));
    expect(firm(80, 26)).toBeGreaterThan(1.3 * firm(80, 20));
    // From there on nobody waits for the last degrees.
    expect(firm(80, 35)).toBeGreaterThan(1.3 * firm(80, 20));
    expect(firm(80, 35)).toBeLessThan(6 * 60);
  });

  it('has no time for nothing', () => {
    for (const volumeMl of [0, -1, NaN, Infinity])
      expect(() => meltCooling({ volumeMl, roomTemperatureC: 20 })).toThrow('cannot cool');
  });
});
