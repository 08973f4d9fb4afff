import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fattyAcidMolarMass,
  saponificationValueByTitration,
  saponificationValueOfFreeAcids,
  theoreticalSaponificationValue,
} from '#chemistry';

const values = [
  ['theoreticalSaponificationValue', theoreticalSaponificationValue],
  ['saponificationValueOfFreeAcids', saponificationValueOfFreeAcids],
] as const;

const acid = fc
  .tuple(fc.integer({ min: 6, max: 24 }), fc.integer({ min: 0, max: 2 }))
  .map(([carbons, bonds]) => `C${String(carbons)}:${String(bonds)}`);
const profile = fc.dictionary(acid, fc.double({ min: 0.01, max: 100, noNaN: true }), {
  minKeys: 1,
  maxKeys: 8,
  noNullPrototype: true,
});

describe.each(values)('%s', (_, valueOf) => {
  it('falls as the chain grows longer', () => {
    const grown = fc.tuple(
      fc.integer({ min: 6, max: 23 }),
      fc.integer({ min: 0, max: 2 }),
      fc.integer({ min: 1, max: 10 }),
    );
    fc.assert(
      fc.property(grown, ([carbons, bonds, more]) => {
        const short = valueOf({ [`C${String(carbons)}:${String(bonds)}`]: 1 });
        expect(valueOf({ [`C${String(carbons + more)}:${String(bonds)}`]: 1 })).toBeLessThan(short);
      }),
    );
  });

  it('reads shares as proportions', () => {
    fc.assert(
      fc.property(profile, fc.double({ min: 0.01, max: 100, noNaN: true }), (acids, factor) => {
        const scaled = Object.fromEntries(Object.entries(acids).map(([name, w]) => [name, w * factor]));
        expect(Math.abs(valueOf(scaled) / valueOf(acids) - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('lies between the values of its acids', () => {
    fc.assert(
      fc.property(profile, (acids) => {
        const pure = Object.keys(acids).map((name) => valueOf({ [name]: 1 }));
        expect(valueOf(acids)).toBeGreaterThan(Math.min(...pure) * (1 - 1e-9));
        expect(valueOf(acids)).toBeLessThan(Math.max(...pure) * (1 + 1e-9));
      }),
    );
  });

  it('throws on what is no profile', () => {
    expect(() => valueOf({ oleic: 100 })).toThrow('oleic');
    expect(() => valueOf({ 'C18:1': -1 })).toThrow('-1');
    expect(() => valueOf({})).toThrow(RangeError);
  });
});

/** Bound as glycerides, acids weigh C₃H₂ more for every three, 38.05 g/mol, and so need less for each gram. */
describe('free acids and their glycerides', () => {
  it('differ by the weight of the glycerol bound', () => {
    fc.assert(
      fc.property(profile, (acids) => {
        const free = saponificationValueOfFreeAcids(acids);
        const bound = theoreticalSaponificationValue(acids);
        expect((3 * 56105.3) / bound - (3 * 56105.3) / free).toBeCloseTo(38.05, 2);
      }),
    );
  });
});

describe('fattyAcidMolarMass', () => {
  /** Butyric acid, C₄H₈O₂: 88.11 g/mol (from memory of the CRC Handbook). */
  it('begins with butter’s shortest', () => {
    expect(fattyAcidMolarMass('C4:0')).toBeCloseTo(88.106, 2);
    expect(fattyAcidMolarMass('C4:1')).toBeCloseTo(88.106 - 2.016, 2);
  });

  it.each(['', 'C18', 'C18:9', 'C4:2', 'C3:0', 'c18:1', 'C18:1 ', ' C18:1', 'C118:1', 'C18:10', 'Cx:1'])(
    'does not know “%s”',
    (name) => {
      expect(fattyAcidMolarMass(name)).toBeUndefined();
    },
  );
});

describe('saponificationValueByTitration', () => {
  const sound = { sampleG: 2, blankMl: 25, backMl: 10, acidMolPerL: 0.5 };

  it('is nothing for a sample that takes no more than the blank', () => {
    expect(saponificationValueByTitration({ ...sound, backMl: 25 })).toEqual({ ok: true, value: 0 });
  });

  it.each([
    { sampleG: 0 },
    { acidMolPerL: 0 },
    { acidMolPerL: -0.5 },
    { backMl: 26 },
    { backMl: -1 },
    { blankMl: NaN },
  ])('refuses %j', (change) => {
    const result = saponificationValueByTitration({ ...sound, ...change });
    expect(result).toMatchObject({ ok: false, issues: [{ code: 'titration.impossible', path: [] }] });
  });
});
