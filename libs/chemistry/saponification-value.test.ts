import { describe, expect, it } from 'vitest';
import {
  fattyAcidMolarMass,
  saponificationValueByTitration,
  theoreticalSaponificationValue,
} from '#chemistry';

describe('theoreticalSaponificationValue', () => {
  it('reads shares as proportions', () => {
    const halves = theoreticalSaponificationValue({ 'C16:0': 1, 'C18:1': 1 });
    expect(theoreticalSaponificationValue({ 'C16:0': 40, 'C18:1': 40 })).toBeCloseTo(halves, 9);
  });

  it('throws on what is no profile', () => {
    expect(() => theoreticalSaponificationValue({ oleic: 100 })).toThrow('oleic');
    expect(() => theoreticalSaponificationValue({ 'C18:1': -1 })).toThrow('-1');
    expect(() => theoreticalSaponificationValue({})).toThrow(RangeError);
  });
});

describe('fattyAcidMolarMass', () => {
  it.each(['', 'C18', 'C18:9', 'C3:0', 'c18:1', 'C18:1 '])('does not know “%s”', (name) => {
    expect(fattyAcidMolarMass(name)).toBeUndefined();
  });
});

describe('saponificationValueByTitration', () => {
  const sound = { sampleG: 2, blankMl: 25, backMl: 10, acidMolPerL: 0.5 };

  it.each([{ sampleG: 0 }, { acidMolPerL: -0.5 }, { backMl: 26 }, { backMl: -1 }, { blankMl: NaN }])(
    'refuses %j',
    (change) => {
      const result = saponificationValueByTitration({ ...sound, ...change });
      expect(result).toMatchObject({ ok: false, issues: [{ code: 'titration.impossible' }] });
    },
  );
});
