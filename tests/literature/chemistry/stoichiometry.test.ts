import { describe, expect, it } from 'vitest';
import {
  fatTable,
  fattyAcidMolarMass,
  fromSheet,
  lyeForFats,
  molarMass,
  naohPerKoh,
  saponificationValueOfFreeAcids,
  theoreticalSaponificationValue,
} from '#chemistry';
import { plainRecipe } from '../../support/plain-recipe.js';

describe('alkali', () => {
  /** IUPAC standard atomic weights 2021: 39.997 g NaOH do the work of 56.105 g KOH. */
  it('needs 0.71289 g of NaOH for 1 g of KOH', () => {
    expect(Math.abs(naohPerKoh - 0.71289)).toBeLessThan(0.0001);
  });
});

describe('molar masses', () => {
  /** CRC Handbook of Chemistry and Physics, physical constants; from memory, last digit ± 1. */
  it.each([
    ['NaOH', molarMass.naoh, 39.997],
    ['KOH', molarMass.koh, 56.105],
    ['glycerol', molarMass.glycerol, 92.094],
    ['water', molarMass.water, 18.015],
    ['lauric', fattyAcidMolarMass('C12:0'), 200.32],
    ['palmitic', fattyAcidMolarMass('C16:0'), 256.42],
    ['stearic', fattyAcidMolarMass('C18:0'), 284.48],
    ['oleic', fattyAcidMolarMass('C18:1'), 282.46],
    ['linoleic', fattyAcidMolarMass('C18:2'), 280.45],
    ['linolenic', fattyAcidMolarMass('C18:3'), 278.43],
    ['ricinoleic', fattyAcidMolarMass('ricinoleic'), 298.46],
    ['erucic', fattyAcidMolarMass('C22:1'), 338.57],
  ])('of %s', (_, ours, handbook) => {
    expect(Math.abs((ours ?? NaN) - handbook)).toBeLessThan(0.02);
  });
});

describe('pure triglycerides', () => {
  /** Saponification values by stoichiometry, as printed in lipid-chemistry texts. */
  it.each([
    ['C12:0', 263.4],
    ['C14:0', 232.7],
    ['C16:0', 208.5],
    ['C18:0', 188.8],
    ['C18:1', 190.1],
    ['C18:2', 191.4],
    ['C18:3', 192.7],
    ['C22:1', 159.7],
  ])('of %s', (acid, printed) => {
    expect(Math.abs(theoreticalSaponificationValue({ [acid]: 100 }) - printed)).toBeLessThan(0.1);
  });

  /** Stoichiometry: 1000 g of triolein (885.45 g/mol) take 3 · 39.997/885.45 · 1000 = 135.5 g of NaOH. */
  it('triolein takes 135.5 g of NaOH per kilogram', () => {
    const used = theoreticalSaponificationValue({ 'C18:1': 100 });
    const triolein = fromSheet({
      key: 'triolein',
      title: 'Triolein',
      saponificationMgKohPerG: { low: used, used, high: used },
      fattyAcidsPercent: { 'C18:1': 100 },
      densityGPerMl: 0.913,
      source: 'stoichiometry',
    });
    const recipe = { ...plainRecipe, fats: [{ fat: 'triolein', percent: 100 }], superfatPercent: 0 };
    const { naohG } = lyeForFats(recipe, fatTable([triolein]), 1000);
    expect(Math.abs(naohG - 135.5)).toBeLessThan(0.1);
  });

  /** Organic-chemistry textbook problem: olive oil of SV 190 has a mean molar mass of 886 g/mol. */
  it('a fat of SV 190 has a mean molar mass of 886', () => {
    expect(Math.abs((3 * 1000 * molarMass.koh) / 190 - 886)).toBeLessThan(0.5);
  });
});

describe('free fatty acids', () => {
  /** Acid values of the pure acids as printed in lipid-chemistry texts, 56 105 / M; from memory, ± 0.1. */
  it.each([
    ['C12:0', 280.1],
    ['C16:0', 218.8],
    ['C18:0', 197.2],
    ['C18:1', 198.6],
    ['ricinoleic', 188.0],
  ])('of %s', (acid, printed) => {
    expect(Math.abs(saponificationValueOfFreeAcids({ [acid]: 100 }) - printed)).toBeLessThan(0.1);
  });

  /**
   * What is sold as stearic acid: half stearic, half palmitic by mass, so 56 105 · (0.5/284.48 + 0.5/256.43)
   * = 208.0; with 60 and 40 % stearic 205.8 and 210.2. The pharmacopoeia's acid value for such a mixture,
   * type 50, is 206 to 212 (from memory).
   */
  it('of trade stearic acid is 208', () => {
    const facts = fatTable([]).get('stearic-acid');
    const { low, used, high } = facts?.saponificationMgKohPerG ?? { low: 0, used: 0, high: 0 };
    expect(Math.abs(used - 208.0)).toBeLessThan(0.1);
    expect(Math.abs(saponificationValueOfFreeAcids({ 'C18:0': 60, 'C16:0': 40 }) - low)).toBeLessThan(0.1);
    expect(Math.abs(saponificationValueOfFreeAcids({ 'C18:0': 40, 'C16:0': 60 }) - high)).toBeLessThan(0.1);
    expect(Math.abs(saponificationValueOfFreeAcids(facts?.fattyAcidsPercent ?? {}) - used)).toBeLessThan(0.1);
  });
});
