import { describe, expect, it } from 'vitest';
import {
  checkFat,
  fromSheet,
  naohPerKoh,
  questionsAbout,
  replacedFat,
  shippedFats,
  type FatFacts,
} from '#chemistry';
import { oliveSheet as sheet, ownOlive } from '../../../tests/support/own-olive.js';

const alike = (value: number) => ({ low: value, used: value, high: value });

/** As it would be rounded. */
const near = (value: number, digits = 1): unknown => expect.closeTo(value, digits);

/**
 * By hand: the mean molar mass of 12 palmitic, 75 oleic, 10 linoleic is 97 / 0.34797 = 278.76 g/mol, so the
 * triglyceride weighs 874.3 and takes 168 316 / 874.3 = 192.5 mg KOH/g.
 */
describe('questions about a fat', () => {
  const doubtful: [string, Partial<FatFacts>, (string | number)[], Readonly<Record<string, unknown>>][] = [
    [
      'fat.saponification-doubtful',
      { saponificationMgKohPerG: alike(172) },
      ['saponificationMgKohPerG', 'used'],
      { used: 172, expected: near(192.5) },
    ],
    [
      'fat.saponification-doubtful',
      { saponificationMgKohPerG: alike(210) },
      ['saponificationMgKohPerG', 'used'],
      { used: 210, expected: near(192.5) },
    ],
    // 0.7129 · 190 = 135.4: the NaOH figure of a sheet, entered as if it were KOH.
    [
      'fat.saponification-as-naoh',
      { saponificationMgKohPerG: alike(135.4) },
      ['saponificationMgKohPerG', 'used'],
      { used: 135.4, asKoh: near(189.9) },
    ],
    [
      'fat.profile-incomplete',
      { fattyAcidsPercent: { 'C16:0': 12, 'C18:1': 75 } },
      ['fattyAcidsPercent'],
      { sum: 87, accepted: { kind: 'range', low: 95, high: 100, unit: '%' } },
    ],
    ['fat.profile-incomplete', { fattyAcidsPercent: {} }, ['fattyAcidsPercent'], { sum: 0 }],
    // 0.8475 + 0.0003 · 189 + 0.00014 · 84 = 0.91596 to water at 15 °C, 0.9119 g/mL at 20 °C.
    [
      'fat.density-doubtful',
      { densityGPerMl: 0.96 },
      ['densityGPerMl'],
      { found: 0.96, expected: near(0.912, 3) },
    ],
  ];

  it.each(doubtful)('are %s for %j', (code, change, path, told) => {
    const fat = { ...ownOlive, ...change };
    const issues = checkFat(fat);
    expect(issues).toMatchObject([{ code, path, title: ownOlive.title, ...told }]);
    expect(checkFat({ ...fat, confirmed: true })).toEqual([]);
    const asked = questionsAbout({ ...fat, confirmed: true });
    expect(asked.map(({ code }) => code)).toEqual(issues.map(({ code }) => code));
  });

  it('are asked of a profile in which an acid is given as none', () => {
    const fattyAcidsPercent = { ...ownOlive.fattyAcidsPercent, 'C18:3': 0 };
    expect(checkFat({ ...ownOlive, fattyAcidsPercent })).toEqual([]);
    expect(checkFat({ ...ownOlive, fattyAcidsPercent, saponificationMgKohPerG: alike(172) })).toMatchObject([
      { code: 'fat.saponification-doubtful' },
    ]);
  });

  it('are asked all at once, so that one confirmation does not hide another', () => {
    const fat = { ...ownOlive, saponificationMgKohPerG: alike(135), fattyAcidsPercent: { 'C18:1': 80 } };
    expect(checkFat(fat).map(({ code }) => code)).toEqual([
      'fat.saponification-as-naoh',
      'fat.profile-incomplete',
    ]);
  });

  /** 5 % of 192.5 is 9.6; 0.02 g/mL around 0.9119. */
  it.each([
    { saponificationMgKohPerG: alike(183) },
    { saponificationMgKohPerG: alike(202) },
    { densityGPerMl: 0.931 },
    { fattyAcidsPercent: { 'C16:0': 12, 'C18:1': 73, 'C18:2': 10 } },
  ])('are not asked within the tolerance: %j', (change) => {
    expect(checkFat({ ...ownOlive, ...change })).toEqual([]);
  });

  /** 192.5 ± 5 %, and less what no lye turns into soap: here up to 10 %. */
  it('say what they take for likely', () => {
    const [issue] = checkFat({
      ...ownOlive,
      saponificationMgKohPerG: alike(210),
      unsaponifiablePercent: { low: 2, high: 10 },
    });
    expect(issue).toMatchObject({
      ...{ value: 210 },
      accepted: { kind: 'range', low: near(192.5 * 0.9 * 0.95, 0), high: near(192.5 * 0.98 * 1.05, 0) },
    });
    expect(checkFat({ ...ownOlive, densityGPerMl: 0.95 })).toMatchObject([
      { value: 0.95, accepted: { kind: 'range', low: near(0.892, 3), high: near(0.932, 3), unit: 'g/mL' } },
    ]);
    const [wax] = checkFat({ ...ownOlive, kind: 'wax', saponificationMgKohPerG: alike(200) });
    expect(wax).toMatchObject({
      ...{
        path: ['saponificationMgKohPerG', 'used'],
        value: 200,
        used: 200,
        most: 150,
        title: ownOlive.title,
      },
      accepted: { kind: 'range', low: 20, high: 150, unit: 'mg KOH/g' },
    });
  });

  it('are asked at 95 % of a profile no more, and at 5 % of hydroxy acids still', () => {
    const profiled = (fattyAcidsPercent: Readonly<Record<string, number>>, change: Partial<FatFacts> = {}) =>
      checkFat({ ...ownOlive, ...change, fattyAcidsPercent }).map(({ code }) => code);
    expect(profiled({ 'C16:0': 15, 'C18:1': 80 })).toEqual([]);
    expect(profiled({ 'C16:0': 14.9, 'C18:1': 80 })).toEqual(['fat.profile-incomplete']);
    const dense = { densityGPerMl: 0.96 };
    expect(profiled({ ricinoleic: 5, 'C18:1': 90 }, dense)).toEqual(['fat.density-doubtful']);
    expect(profiled({ ricinoleic: 5.1, 'C18:1': 90 }, dense)).toEqual([]);
  });

  /** As a fatty acid it is no triglyceride, which Lund's relation is for. */
  it('do not hold a fatty acid or a wax against Lund’s relation', () => {
    const acid = { kind: 'fatty-acid', saponificationMgKohPerG: alike(198.6), densityGPerMl: 0.86 } as const;
    expect(checkFat({ ...ownOlive, ...acid, fattyAcidsPercent: { 'C18:1': 100 } })).toEqual([]);
  });

  /** A wrong saponification value would move Lund's density by 0.0003 g/mL for each mg: the profile's stands in for it. */
  it('are asked once for one slip', () => {
    const naoh = { ...ownOlive, saponificationMgKohPerG: alike(265), densityGPerMl: 0.897 };
    expect(checkFat(naoh).map(({ code }) => code)).toEqual(['fat.saponification-doubtful']);
    const low = { ...ownOlive, saponificationMgKohPerG: alike(120), densityGPerMl: 0.928 };
    expect(checkFat(low).map(({ code }) => code)).toEqual(['fat.saponification-doubtful']);
  });

  it('allow for what is unsaponifiable', () => {
    const shea = { ...ownOlive, saponificationMgKohPerG: alike(172) };
    expect(checkFat({ ...shea, unsaponifiablePercent: { low: 1, high: 10 } })).toEqual([]);
    expect(checkFat({ ...shea, unsaponifiablePercent: { low: 0, high: 1 } })).toHaveLength(1);
    const asNaoh = { ...shea, saponificationMgKohPerG: alike(172 * naohPerKoh) };
    expect(checkFat({ ...asNaoh, unsaponifiablePercent: { low: 1, high: 10 } })).toMatchObject([
      { code: 'fat.saponification-as-naoh' },
    ]);
  });

  it('do not hold a density against Lund’s relation without an iodine value, or for castor oil', () => {
    const { iodine: _iodine, ...noIodine } = ownOlive;
    expect(checkFat({ ...noIodine, densityGPerMl: 0.96 })).toEqual([]);
    const castor = fromSheet({
      ...sheet,
      saponificationMgKohPerG: alike(180),
      fattyAcidsPercent: { ricinoleic: 90, 'C18:1': 5, 'C18:2': 5 },
      densityGPerMl: 0.959,
    });
    expect(checkFat(castor)).toEqual([]);
  });

  it('ask about a wax that takes more lye than any wax does', () => {
    const wax = (value: number, key = 'own-wax') =>
      checkFat(
        fromSheet({
          ...sheet,
          ...{ key, kind: 'wax', saponificationMgKohPerG: alike(value), fattyAcidsPercent: {} },
        }),
      ).map(({ code }) => code);
    expect(wax(150)).toEqual([]);
    expect(wax(150.1)).toEqual(['fat.wax-saponification-doubtful']);
    expect(wax(400)).toEqual(['fat.wax-saponification-doubtful']);
    expect(wax(400, 'coconut')).toEqual(['fat.wax-saponification-doubtful']);
    expect(wax(140, 'coconut')).toEqual(['fat.differs-from-shipped']);
  });

  /** Of the shipped figure, whatever it is: 5 % more or less is a lot, 5.1 % is asked about until it is confirmed. */
  it('ask about an own fat that replaces a shipped one and is more than 5 % off', () => {
    const shipped = shippedFats.find(({ key }) => key === 'jojoba');
    if (shipped === undefined) throw new Error('no jojoba');
    const jojoba = (share: number, confirmed = false) =>
      checkFat({
        ...shipped,
        saponificationMgKohPerG: alike(shipped.saponificationMgKohPerG.used * share),
        confirmed,
      });
    for (const share of [0.951, 1, 1.049]) expect(jojoba(share)).toEqual([]);
    expect(jojoba(1.051)).toMatchObject([
      { code: 'fat.differs-from-shipped', path: ['saponificationMgKohPerG', 'used'] },
    ]);
    expect(jojoba(1.051)).toMatchObject([{ differsByPercent: near(5.1) }]);
    expect(jojoba(0.949)).toMatchObject([{ differsByPercent: near(-5.1) }]);
    expect(jojoba(0.949, true)).toEqual([]);
    const { used, ...limits } = { used: shipped.saponificationMgKohPerG.used, unit: 'mg KOH/g' };
    expect(jojoba(1.2)).toMatchObject([
      {
        ...{ value: near(used * 1.2), used: near(used * 1.2), shipped: used, title: shipped.title },
        accepted: { kind: 'range', low: near(used * 0.95), high: near(used * 1.05), ...limits },
      },
    ]);
  });

  it('know no fat that the shipped one itself or a new one replaces', () => {
    const [shipped] = shippedFats;
    if (shipped === undefined) throw new Error('no fats');
    expect(replacedFat(shipped)).toBeUndefined();
    expect(replacedFat({ ...shipped, key: 'of-our-own' })).toBeUndefined();
    expect(replacedFat({ ...shipped })).toEqual({
      shipped: shipped.saponificationMgKohPerG.used,
      differsByPercent: 0,
    });
  });

  it('leave a wax alone, for it has no profile and no such laws', () => {
    const wax = fromSheet({
      ...sheet,
      kind: 'wax',
      saponificationMgKohPerG: alike(50),
      fattyAcidsPercent: {},
    });
    expect(checkFat(wax)).toEqual([]);
  });

  /** Pure oleic acid takes 56 105 / 282.47 = 198.6; as triolein it would take 190.1. */
  it('hold a fatty acid against the value of free acids', () => {
    const acid = fromSheet({
      ...sheet,
      kind: 'fatty-acid',
      saponificationMgKohPerG: alike(201),
      fattyAcidsPercent: { 'C18:1': 100 },
      densityGPerMl: 0.89,
    });
    expect(checkFat(acid)).toEqual([]);
    const asNaoh = { ...acid, saponificationMgKohPerG: alike(198.6 * naohPerKoh) };
    expect(checkFat(asNaoh)).toMatchObject([{ code: 'fat.saponification-as-naoh' }]);
    expect(checkFat({ ...acid, saponificationMgKohPerG: alike(186) })).toMatchObject([
      { code: 'fat.saponification-doubtful' },
    ]);
  });

  it('do not fail on a fat that is refused', () => {
    expect(questionsAbout({ ...ownOlive, fattyAcidsPercent: { oleic: 100 } })).toEqual([]);
    expect(questionsAbout({ ...ownOlive, fattyAcidsPercent: { 'C18:1': 120, 'C18:2': -20 } })).toEqual([]);
    expect(questionsAbout({ ...ownOlive, fattyAcidsPercent: { 'C18:1': 0 } })).toMatchObject([
      { code: 'fat.profile-incomplete' },
    ]);
  });
});
