import { describe, expect, it } from 'vitest';
import { checkFat, fromSheet, naohPerKoh, questionsAbout, shippedFats, type FatFacts } from '#chemistry';

const sheet = {
  key: 'own-olive',
  title: 'Olive oil of our own (invented)',
  saponificationMgKohPerG: { low: 188, used: 189, high: 190 },
  iodine: { low: 80, high: 88 },
  fattyAcidsPercent: { 'C16:0': 12, 'C18:1': 75, 'C18:2': 10 },
  densityGPerMl: 0.913,
  source: 'invented supplier’s sheet',
};
const ownOlive = fromSheet(sheet);
const alike = (value: number) => ({ low: value, used: value, high: value });

describe('fromSheet', () => {
  it('takes a fat for a triglyceride that expands like one', () => {
    expect(ownOlive).toMatchObject({ kind: 'triglyceride', expansionGPerMlPerC: 0.00064 });
    expect(ownOlive.evidence.density).toEqual({ kind: 'published', source: sheet.source });
    expect(ownOlive.evidence.expansion).not.toEqual(ownOlive.evidence.density);
    expect(ownOlive.evidence.inci).toBeUndefined();
  });

  it('keeps what the sheet says', () => {
    const wax = fromSheet({ ...sheet, kind: 'wax', expansionGPerMlPerC: 0.0008, behaviour: 'Sets at once.' });
    expect(wax).toMatchObject({ kind: 'wax', expansionGPerMlPerC: 0.0008, behaviour: 'Sets at once.' });
    expect(wax.evidence.expansion).toEqual({ kind: 'published', source: sheet.source });
  });

  it('says that the expansion of a wax is borrowed', () => {
    expect(fromSheet({ ...sheet, kind: 'wax' }).evidence.expansion.kind).toBe('from memory');
  });
});

describe('checkFat', () => {
  it('has nothing against a fat from a sheet', () => {
    expect(checkFat(ownOlive)).toEqual([]);
  });

  const refused: [string, Partial<FatFacts>, (string | number)[]][] = [
    [
      'fat.saponification-disordered',
      { saponificationMgKohPerG: { low: 190, used: 189, high: 195 } },
      ['saponificationMgKohPerG'],
    ],
    [
      'fat.saponification-disordered',
      { saponificationMgKohPerG: { low: 0.135, used: 0.136, high: 0.14 } },
      ['saponificationMgKohPerG'],
    ],
    ['fat.unknown-fatty-acid', { fattyAcidsPercent: { oleic: 70 } }, ['fattyAcidsPercent', 'oleic']],
    ['fat.unknown-fatty-acid', { fattyAcidsPercent: { 'C18:1': -1 } }, ['fattyAcidsPercent', 'C18:1']],
    ['fat.fatty-acids-over-100', { fattyAcidsPercent: { 'C18:1': 70, 'C18:2': 40 } }, ['fattyAcidsPercent']],
    ['fat.density-out-of-range', { densityGPerMl: 913 }, ['densityGPerMl']],
    ['fat.expansion-out-of-range', { expansionGPerMlPerC: -0.00064 }, ['expansionGPerMlPerC']],
    ['fat.iodine-disordered', { iodine: { low: 90, high: 80 } }, ['iodine']],
    [
      'fat.unsaponifiable-disordered',
      { unsaponifiablePercent: { low: 0, high: 90 } },
      ['unsaponifiablePercent'],
    ],
  ];

  it.each(refused)('finds %s in %j', (code, change, path) => {
    expect(checkFat({ ...ownOlive, ...change })).toMatchObject([{ code, path }]);
  });

  it.each(refused)('refuses %s even if confirmed', (code, change) => {
    expect(checkFat({ ...ownOlive, ...change, confirmed: true })).toMatchObject([{ code }]);
  });
});

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
  });
});
