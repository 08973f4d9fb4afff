import { describe, expect, it } from 'vitest';
import {
  batchForFats,
  fatTable,
  fattyAcidMolarMass,
  molarMass,
  theoreticalSaponificationValue,
  type BatchAmounts,
  type BatterRecipe,
  type FatFacts,
} from '#chemistry';
import { plainRecipe } from '../../support/plain-recipe.js';

/** Pure triolein stands in for a fat: its saponification is stoichiometry and nothing else. */
const used = theoreticalSaponificationValue({ 'C18:1': 100 });
const coconut = fatTable([]).get('coconut') as FatFacts;
const triolein: FatFacts = {
  ...coconut,
  key: 'triolein',
  title: 'Triolein',
  saponificationMgKohPerG: { low: used, used, high: used },
  fattyAcidsPercent: { 'C18:1': 100 },
};
const fats = fatTable([triolein]);

const recipe: BatterRecipe = {
  ...plainRecipe,
  fats: [{ fat: 'triolein', percent: 100 }],
  superfatPercent: 0,
};

function kilogram(over: Partial<BatterRecipe>): BatchAmounts {
  const batch = batchForFats({ ...recipe, ...over }, fats, 1000);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return batch.value;
}

describe('saponification of a kilogram of triolein', () => {
  /** Stoichiometry: 135.5 g of NaOH make 1031.5 g of sodium oleate and 104.0 g of glycerol. */
  it('balances: fat and alkali weigh what soap and glycerol weigh', () => {
    const { pureNaohG } = kilogram({});
    const moles = pureNaohG / molarMass.naoh;
    const oleate = (fattyAcidMolarMass('C18:1') ?? NaN) + molarMass.naoh - molarMass.water;
    const soapG = moles * oleate;
    const glycerolG = (moles / 3) * molarMass.glycerol;
    expect(Math.abs(pureNaohG - 135.5)).toBeLessThan(0.1);
    expect(Math.abs(soapG - 1031.5)).toBeLessThan(0.1);
    expect(Math.abs(glycerolG - 104)).toBeLessThan(0.1);
    expect(Math.abs(1000 + pureNaohG - soapG - glycerolG)).toBeLessThan(1e-9);
  });

  /** IUPAC atomic weights 2021: 0.71289 g of NaOH replace 1 g of KOH; triolein takes 190.1 mg KOH/g. */
  it('takes 190.1 g of KOH instead, or a mixture by moles', () => {
    expect(Math.abs(kilogram({ kohSharePercent: 100, kohPurityPercent: 100 }).pureKohG - 190.1)).toBeLessThan(
      0.1,
    );
    const { pureNaohG, pureKohG } = kilogram({ kohSharePercent: 60, kohPurityPercent: 90 });
    const inKoh = pureNaohG / 0.71289 + pureKohG;
    expect(Math.abs(inKoh - 190.1)).toBeLessThan(0.1);
    expect(Math.abs(pureKohG / 190.1 - 0.6)).toBeLessThan(0.001);
  });
});

describe('acids', () => {
  /**
   * Stoichiometry, g of NaOH per g: citric acid (three protons) 0.6246, its monohydrate 0.5710, lactic acid 0.4440;
   * acetic acid 39.997/60.052 = 0.6660, so a 5 % vinegar takes 0.0333.
   */
  it.each([
    ['citric-acid', 100, 0.6246],
    ['citric-acid-monohydrate', 100, 0.571],
    ['lactic-acid', 100, 0.444],
    ['acetic-acid', 5, 0.0333],
  ] as const)('%s at %d %% takes its alkali on top, superfat or not', (acid, strengthPercent, perGram) => {
    for (const superfatPercent of [0, 8]) {
      const without = kilogram({ superfatPercent });
      const withAcid = kilogram({ superfatPercent, acids: [{ acid, percent: 2, strengthPercent }] });
      expect(Math.abs((withAcid.pureNaohG - without.pureNaohG) / 20 - perGram)).toBeLessThan(0.0001);
    }
  });
});
