import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lyeDensity } from '#chemistry';

fc.configureGlobal({ seed: 1 });

describe('density of lye', () => {
  /** International Critical Tables, vol. III, p. 79 (Perry's Handbook). */
  it.each([
    [24, 20, 1.2629],
    [32, 20, 1.349],
    [32, 40, 1.3362],
    [40, 20, 1.43],
    [40, 60, 1.4027],
    [50, 20, 1.5253],
    // The table prints a 30 °C column, which the library leaves out and interpolates: all of it that was read.
    [24, 30, 1.257],
    [28, 30, 1.3003],
    [32, 30, 1.3426],
    [36, 30, 1.3834],
    [40, 30, 1.4232],
    [44, 30, 1.4615],
    [48, 30, 1.4993],
    [50, 30, 1.5181],
  ])('of %d %% at %d °C is the handbook’s', (concentration, temperatureC, handbook) => {
    expect(Math.abs(lyeDensity(concentration, temperatureC) - handbook)).toBeLessThan(0.0003);
  });

  /**
   * AdvancedThermo tables of NaOH(aq), 5 and 6 mol/kg: measurements other than the handbook's. Their 10 °C
   * column lies below our table's cold end, 20 °C, and is refused.
   */
  it.each([
    [16.67, 25, 1.17925],
    [16.67, 40, 1.17093],
    [16.67, 55, 1.16212],
    [16.67, 70, 1.15308],
    [19.354, 25, 1.20866],
    [19.354, 40, 1.20013],
    [19.354, 55, 1.19121],
    [19.354, 70, 1.18192],
  ])('of %d %% at %d °C agrees with molal tables', (concentration, temperatureC, table) => {
    expect(Math.abs(lyeDensity(concentration, temperatureC) - table)).toBeLessThan(0.003);
  });

  /** Laliberté and Cooper, J. Chem. Eng. Data 49 (2004) 1141-1151; coefficients for NaOH from memory. */
  it('stays within 0.3 % of a closed form over the whole field', () => {
    const strength = fc.double({ min: 16, max: 50, noNaN: true });
    const heat = fc.double({ min: 20, max: 80, noNaN: true });
    fc.assert(
      fc.property(strength, heat, (concentration, temperatureC) => {
        const theirs = closedForm(concentration / 100, temperatureC);
        expect(Math.abs(lyeDensity(concentration, temperatureC) / theirs - 1)).toBeLessThan(0.003);
      }),
      { numRuns: 2000 },
    );
  });

  /**
   * Two rows 8 % apart miss the handbook's row between them by so much; rows 4 % apart, as the table has them, miss by
   * a quarter of it, the error of straight lines growing with the square of the step. Likewise for its columns.
   */
  it('bends so little that straight lines add 0.0003 g/mL at most', () => {
    const missed = (before: number, between: number, after: number): number =>
      Math.abs((before + after) / 2 - between) / 4;
    const misses = [20, 24, 28, 32, 36, 40, 44].flatMap((c) =>
      [40, 60].map((t) => {
        const between = lyeDensity(c, t);
        const rows = missed(lyeDensity(c - 4, t), between, lyeDensity(c + 4, t));
        const columns = missed(lyeDensity(c, t - 20), between, lyeDensity(c, t + 20));
        return rows + columns;
      }),
    );
    expect(Math.max(...misses)).toBeLessThan(0.0003);
  });

  /** Density of water, CRC Handbook: shows that the closed form was written down rightly. */
  it.each([
    [20, 0.9982],
    [40, 0.99222],
    [60, 0.9832],
    [80, 0.9718],
  ])('the closed form has water at %d °C right', (temperatureC, handbook) => {
    expect(closedForm(0, temperatureC)).toBeCloseTo(handbook, 4);
  });
});

/** ρ = 1 / (w_w/ρ_w + w/ρ_a), ρ_a = (c0 w + c1) exp(1e-6 (t + c4)²) / (w + c2 + c3 t); g/mL. */
function closedForm(w: number, t: number): number {
  const apparent =
    ((385.55 * w + 753.47) * Math.exp(1e-6 * (t + 542.88) ** 2)) / (w - 0.10938 + 0.0006953 * t);
  return 1 / ((1 - w) / water(t) + w / apparent) / 1000;
}

/** Density of water, kg/m³: Kell, J. Chem. Eng. Data 20 (1975) 97-105; from memory. */
function water(t: number): number {
  const numerator =
    999.83952 +
    16.945176 * t -
    7.9870401e-3 * t ** 2 -
    46.170461e-6 * t ** 3 +
    105.56302e-9 * t ** 4 -
    280.54253e-12 * t ** 5;
  return numerator / (1 + 16.87985e-3 * t);
}
