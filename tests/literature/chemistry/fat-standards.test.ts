import { describe, expect, it } from 'vitest';
import {
  fatDensity,
  fatTable,
  hardFattyAcidsPercent,
  naohPerKoh,
  oleicPercent,
  saponificationValueOfFreeAcids,
  shippedFats,
  theoreticalSaponificationValue,
  type FatFacts,
} from '#chemistry';
import { publishedFats, waterGPerMl } from './fat-ranges.js';

const fats = fatTable([]);
const only = (fat: string) => ({ fats: [{ fat, percent: 100 }] });

function factsOf(key: string): FatFacts {
  const facts = fats.get(key);
  if (facts === undefined) throw new Error(`no fat ${key}`);
  return facts;
}

/** Waxes have no profile. */
const withProfile = shippedFats.filter(({ kind }) => kind !== 'wax');

/** @returns the value that the profile gives, for the kind of fat it is */
function theoretical({ kind, fattyAcidsPercent }: FatFacts): number {
  return kind === 'fatty-acid'
    ? saponificationValueOfFreeAcids(fattyAcidsPercent)
    : theoreticalSaponificationValue(fattyAcidsPercent);
}

describe('the limits of the standards', () => {
  it.each(publishedFats)('for $key are carried over, both ends', ({ key, saponification, iodine }) => {
    const facts = factsOf(key);
    const { low, used, high } = facts.saponificationMgKohPerG;
    expect([low, high]).toEqual(saponification);
    expect(used).toBeLessThanOrEqual((low + high) / 2 + 1e-12);
    if (iodine[1] === Infinity) expect(facts.iodine).toBeUndefined();
    else expect(facts.iodine).toEqual({ low: iodine[0], high: iodine[1] });
  });

  it.each(publishedFats)('for $key hold its density', ({ key, density: [low, high], sampleC, waterC }) => {
    const relative = fatDensity(factsOf(key), sampleC) / waterGPerMl[waterC];
    expect(relative).toBeGreaterThanOrEqual(low - 1e-9);
    expect(relative).toBeLessThanOrEqual(high + 1e-9);
  });

  /**
   * Those that Lund's relation is not meant for. USP 29 (castor; saponification and iodine value from memory), Codex CXS 325R-2017 (unrefined shea, whose density is given at 20 and at 40 °C).
   */
  it.each([
    ['castor', [176, 182], [83, 88], [0.957, 0.961], 25, waterGPerMl[25]],
    ['shea-butter', [160, 195], [30, 75], [0.89, 0.93], 40, waterGPerMl[20]],
    ['shea-butter', [160, 195], [30, 75], [0.91, 0.98], 20, waterGPerMl[20]],
  ] as const)('for %s hold its figures', (key, saponification, iodine, density, sampleC, water) => {
    const facts = factsOf(key);
    const { low, high } = facts.saponificationMgKohPerG;
    expect([low, high]).toEqual(saponification);
    expect(facts.iodine).toEqual({ low: iodine[0], high: iodine[1] });
    expect(fatDensity(facts, sampleC) / water).toBeGreaterThan(density[0] - 1e-9);
    expect(fatDensity(facts, sampleC) / water).toBeLessThan(density[1] + 1e-9);
  });

  /** Merck Index: 92.2, 81.7 and 0.8642 at 25/25 °C, one figure each; a lot's width is ours, from memory. */
  it('for jojoba hold the one figure of the handbook', () => {
    const { saponificationMgKohPerG: sv, iodine, ...facts } = factsOf('jojoba');
    expect(Math.abs(sv.used / 92.2 - 1)).toBeLessThan(0.005);
    expect(sv.low).toBeLessThan(92.2 * 0.98);
    expect(sv.high).toBeGreaterThan(92.2 * 1.02);
    expect(iodine?.low).toBeLessThan(81.7);
    expect(iodine?.high).toBeGreaterThan(81.7);
    expect(fatDensity({ ...facts }, 25) / waterGPerMl[25]).toBeCloseTo(0.8642, 6);
  });

  /** USP 29, Candelilla Wax: 43 to 65; USP 32, Carnauba Wax: 78 to 95. */
  it.each([
    ['candelilla-wax', 43, 65],
    ['carnauba-wax', 78, 95],
  ])('for %s are those of the monograph', (key, low, high) => {
    expect(factsOf(key).saponificationMgKohPerG).toMatchObject({ low, high });
  });

  /** CXS 210 and CXS 325R, in per cent of the fat: rice bran is the highest of the oils, shea of all. */
  it.each([
    ['coconut', 0, 1.5],
    ['palm', 0, 1.2],
    ['maize', 0, 2.8],
    ['rice-bran', 0, 6.5],
    ['shea-butter', 1, 19],
  ])('for %s name what is unsaponifiable', (key, low, high) => {
    expect(factsOf(key).unsaponifiablePercent).toEqual({ low, high });
  });
});

describe('alkali demand', () => {
  /** Codex CXS 210-1999, Table 2, times 0.71289/1000: g of NaOH per g of fat. */
  it.each([
    ['coconut', 0.1768, 0.1889],
    ['palm', 0.1354, 0.149],
    ['soybean', 0.1347, 0.139],
    ['sunflower', 0.1333, 0.1383],
    ['rapeseed', 0.1297, 0.1376],
    ['babassu', 0.1747, 0.1825],
  ])('of %s lies in the standard’s range', (key, low, high) => {
    const sv = factsOf(key).saponificationMgKohPerG;
    expect(Math.abs((sv.low * naohPerKoh) / 1000 - low)).toBeLessThan(0.0002);
    expect(Math.abs((sv.high * naohPerKoh) / 1000 - high)).toBeLessThan(0.0002);
    expect((sv.used * naohPerKoh) / 1000).toBeGreaterThan(low - 0.0002);
    expect((sv.used * naohPerKoh) / 1000).toBeLessThan(high);
  });

  /** Second sources: British Pharmacopoeia 1993 (castor), Singapore Food Regulations (coconut), Merck Index
   *  (sunflower, maize), European Pharmacopoeia's ester plus acid value (beeswax: 70-80 and 17-24). */
  it.each([
    ['castor', 176, 187],
    ['coconut', 250, 264],
    ['sunflower', 188, 194],
    ['maize', 187, 196],
    ['beeswax', 87, 104],
  ])('of %s agrees with a second source', (key, low, high) => {
    const { used } = factsOf(key).saponificationMgKohPerG;
    expect(used).toBeGreaterThanOrEqual(low);
    expect(used).toBeLessThanOrEqual(high);
  });

  /** Merck Index: jojoba's wax esters have a mean molar mass of 606, so 56105/606 = 92.6; it prints 92.2. */
  it('of jojoba is that of a wax ester', () => {
    expect(Math.abs(factsOf('jojoba').saponificationMgKohPerG.used - 92.6)).toBeLessThanOrEqual(0.4);
  });

  /** Survey of 33 lards from Canadian packing plants, about 1950, abstract: mean SV 193.9, mean IV 58.7. */
  it('of lard takes in the mean of a survey', () => {
    const { saponificationMgKohPerG: sv, iodine } = factsOf('lard');
    expect(iodine?.low).toBeLessThan(58.7);
    expect(iodine?.high).toBeGreaterThan(58.7);
    expect(sv.low).toBeLessThanOrEqual(193.9);
    expect(sv.high).toBeGreaterThanOrEqual(193.9);
    expect(Math.abs(sv.used / 193.9 - 1)).toBeLessThan(0.02);
  });
});

describe('fatty acids', () => {
  /** Codex CXS 210-1999: SV worked out from the middles of Table 1, by hand, beside the range of Table 2. */
  it.each([
    ['coconut', 254.4],
    ['palm', 198.7],
    ['soybean', 192.6],
    ['maize', 192.9],
    ['cottonseed', 195.5],
    ['sesame', 192.1],
  ])('of %s give its saponification value', (key, printed) => {
    const { fattyAcidsPercent, saponificationMgKohPerG } = factsOf(key);
    const ours = theoreticalSaponificationValue(fattyAcidsPercent);
    expect(Math.abs(ours - printed)).toBeLessThan(1);
    expect(ours).toBeGreaterThanOrEqual(saponificationMgKohPerG.low);
    expect(ours).toBeLessThanOrEqual(saponificationMgKohPerG.high);
  });

  /**
   * AOCS Cd 3a-94: a profile gives the value of its pure triglyceride, and what is unsaponifiable takes that share off.
   * The two tables of a standard are measured separately, so agreement checks both. Allowed beyond the range: half a
   * per cent, because a profile of middles is scaled to 100 % (babassu: 244.4 against 245; mid oleic sunflower, whose
   * range is one unit wide: 191.1 against 191).
   */
  it.each(withProfile)('of $key give a value inside its range', (fat) => {
    const { low, high } = fat.saponificationMgKohPerG;
    const unsaponifiable = fat.unsaponifiablePercent ?? { low: 0, high: 0 };
    const pure = theoretical(fat);
    expect(pure * (1 - unsaponifiable.low / 100)).toBeGreaterThanOrEqual(low * 0.995);
    expect(pure * (1 - unsaponifiable.high / 100)).toBeLessThanOrEqual(high * 1.005);
  });

  /**
   * The same relation, less the middle of what is unsaponifiable. Four per cent is what middles of ranges leave
   * (wheat germ and sea buckthorn come nearest to it, from below). Above the profile is the side that leaves lye in the soap:
   * there, one per cent.
   */
  it.each(withProfile)('of $key give a value near the one used, and hardly below it', (fat) => {
    const { low = 0, high = 0 } = fat.unsaponifiablePercent ?? {};
    const pure = theoretical(fat);
    const { used } = fat.saponificationMgKohPerG;
    expect(used / (pure * (1 - (low + high) / 200))).toBeGreaterThan(0.96);
    expect(used / (pure * (1 - (low + high) / 200))).toBeLessThan(1.04);
    expect(used / pure).toBeLessThanOrEqual(1.0105);
  });

  /** Stoichiometry of the pure acids: 56 105 / 284.48 (stearic) = 197.2, / 256.43 (palmitic) = 218.8. */
  it('keep the two grades of stearic acid apart', () => {
    expect(factsOf('stearic-acid-95').saponificationMgKohPerG.low).toBeLessThan(197.2);
    expect(factsOf('stearic-acid-95').saponificationMgKohPerG.high).toBeLessThan(
      factsOf('stearic-acid').saponificationMgKohPerG.low,
    );
    expect(factsOf('stearic-acid').saponificationMgKohPerG.used).toBeCloseTo((197.2 + 218.8) / 2, 0);
  });

  /**
   * AOCS Cd 1c-85, calculated iodine value, per cent of each acid times its factor; castor's factor is not in
   * it and follows from the same stoichiometry (25 381 / 311.15 g/mol of ricinolein per double bond = 81.6).
   * Allowed: 0.2, because a profile of middles is scaled to 100 % (babassu's middles add up to 107).
   */
  it.each([
    ...publishedFats.map(({ key, iodine }) => [key, ...iodine] as const),
    ['shea-butter', 30, 75] as const,
    ['cocoa-butter', 33, 42] as const,
    ['castor', 83, 88] as const,
  ])('of %s give its iodine value', (key, low, high) => {
    const factors = new Map([
      ['C16:1', 0.95],
      ['C18:1', 0.86],
      ['C18:2', 1.732],
      ['C18:3', 2.616],
      ['C20:1', 0.785],
      ['C22:1', 0.723],
      ['ricinoleic', 0.816],
    ]);
    const iodine = Object.entries(factsOf(key).fattyAcidsPercent).reduce(
      (sum, [acid, share]) => sum + (factors.get(acid) ?? 0) * share,
      0,
    );
    expect(iodine).toBeGreaterThan(low - 0.2);
    expect(iodine).toBeLessThan(high + 0.2);
  });

  /** The same Canadian survey: saturated 45.6, oleic 44.7 %. Lauric to stearic is nearly all that is saturated. */
  it('of lard are those of the survey', () => {
    expect(Math.abs(oleicPercent(only('lard'), fats) - 44.7)).toBeLessThan(1);
    expect(Math.abs(hardFattyAcidsPercent(only('lard'), fats) - 45.6)).toBeLessThan(4);
  });
});

describe('density', () => {
  /**
   * Relative densities from sources other than the one a fat's own density came from: Singapore Food
   * Regulations (coconut), Merck Index (sunflower, maize), European Pharmacopoeia (sweet almond), Codex
   * CXS 210's apparent density at 50 °C (palm), BP 1993 (castor). The slope's own error, 0.003, is allowed.
   */
  it.each([
    ['coconut', 30, waterGPerMl[20], 0.913, 0.918],
    ['sunflower', 25, waterGPerMl[25], 0.915, 0.919],
    ['maize', 25, waterGPerMl[25], 0.916, 0.921],
    ['sweet-almond', 20, waterGPerMl[20], 0.916, 0.916],
    ['palm', 50, 1, 0.889, 0.895],
    ['castor', 20, waterGPerMl[20], 0.952, 0.965],
  ])('of %s at %d °C agrees with a second source', (key, temperatureC, waterDensity, low, high) => {
    const relative = fatDensity(factsOf(key), temperatureC) / waterDensity;
    expect(relative).toBeGreaterThan(low - 0.003);
    expect(relative).toBeLessThan(high + 0.003);
  });

  /**
   * Allen's Commercial Organic Analysis, from memory: beeswax 0.822 at 98.5 °C, molten. As a solid it is 0.96 (European
   * Pharmacopoeia), which no batter holds.
   */
  it('of beeswax is that of the melt', () => {
    expect(fatDensity(factsOf('beeswax'), 98.5)).toBeCloseTo(0.822, 2);
    expect(fatDensity(factsOf('beeswax'), 70)).toBeLessThan(0.88);
  });

  /** Museum of Fine Arts, Boston, CAMEO: avocado oil about 0.91 g/mL. Cocoa butter: no published value here. */
  it('of avocado by Lund’s relation is about 0.91', () => {
    expect(Math.abs(fatDensity(factsOf('avocado'), 20) - 0.91)).toBeLessThan(0.005);
  });
});
