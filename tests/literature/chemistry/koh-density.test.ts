import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kohDensity, lyeDensity, lyeSolutionDensity } from '#chemistry';

fc.configureGlobal({ seed: 1 });

describe('density of potash lye', () => {
  /** Cracow University of Technology, physics tables, densities of solutions at 18 °C. None of it is in the library. */
  it.each([
    [5, 1.045],
    [10, 1.091],
    [15, 1.139],
    [20, 1.188],
    [25, 1.238],
    [30, 1.29],
    [35, 1.344],
    [40, 1.4],
  ])('of %d %% at 18 °C is the table’s within 0.15 %%', (concentration, table) => {
    expect(Math.abs(kohDensity(concentration, 18) / table - 1)).toBeLessThan(0.0015);
  });

  /** International Critical Tables, vol. III, densities of aqueous KOH at 15 °C; from memory. */
  it.each([
    [20, 1.1884],
    [30, 1.2905],
    [40, 1.3991],
    [50, 1.5143],
  ])('of %d %% at 15 °C is the handbook’s within 0.1 %%', (concentration, handbook) => {
    expect(Math.abs(kohDensity(concentration, 15) / handbook - 1)).toBeLessThan(0.001);
  });

  /**
   * Haug et al., Int. J. Hydrogen Energy 42 (2017), doi 10.1016/j.ijhydene.2017.05.031: the fit as quoted in an
   * open-source electrolyser model, its range from memory (0 to 50 %, beyond 80 °C). Rough, but not Laliberté's.
   */
  it('stays within 2 % of a fit made for electrolysers, hot or cold', () => {
    const strength = fc.double({ min: 16, max: 50, noNaN: true });
    const heat = fc.double({ min: 20, max: 80, noNaN: true });
    fc.assert(
      fc.property(strength, heat, (c, t) => {
        const theirs =
          (1001.53053 - 0.08343 * t - 0.00401 * t ** 2 + 5.51232e-6 * t ** 3 - 8.20994e-10 * t ** 4) *
          Math.exp(0.0086 * c);
        expect(Math.abs((1000 * kohDensity(c, t)) / theirs - 1)).toBeLessThan(0.02);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('density of lye from both alkalis', () => {
  /**
   * Second estimate: Young's rule (T. F. Young, 1951; from memory), mixing the solutions at the same
   * molality and not at the same mass fraction. Molar masses: IUPAC 2021, abridged.
   */
  it('moves by less than 0.4 % when mixed at equal molality', () => {
    const strength = fc.double({ min: 22, max: 40, noNaN: true });
    const heat = fc.double({ min: 20, max: 80, noNaN: true });
    const kohShare = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(strength, heat, kohShare, (c, t, share) => {
        const solution = { naohG: c * (1 - share), kohG: c * share, waterG: 100 - c };
        const moles = { naoh: solution.naohG / 39.997, koh: solution.kohG / 56.105 };
        const waterPerMole = solution.waterG / (moles.naoh + moles.koh);
        const volume = (n: number, molarMass: number, density: (c: number, t: number) => number): number =>
          (n * (molarMass + waterPerMole)) / density((100 * molarMass) / (molarMass + waterPerMole), t);
        const naohPart = volume(moles.naoh, 39.997, lyeDensity);
        const kohPart = volume(moles.koh, 56.105, kohDensity);
        const theirs = 100 / (naohPart + kohPart);
        expect(Math.abs(lyeSolutionDensity(solution, t) / theirs - 1)).toBeLessThan(0.004);
      }),
      { numRuns: 2000 },
    );
  });
});
