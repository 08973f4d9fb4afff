import { describe, expect, it } from 'vitest';
import { checkFat, type FatFacts } from '#chemistry';
import { ownOlive } from '../../../tests/support/own-olive.js';

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

  const disordered = (low: number, used: number, high: number) =>
    checkFat({ ...ownOlive, confirmed: true, saponificationMgKohPerG: { low, used, high } });

  it('takes saponification values from 20 to 600 in their order, and says so', () => {
    for (const [low, used, high] of [
      [20, 20, 20],
      [600, 600, 600],
      [20, 300, 600],
    ] as const) {
      expect(disordered(low, used, high)).toEqual([]);
    }
    for (const [low, used, high] of [
      [19.9, 189, 190],
      [188, 189, 600.1],
      [188, 187, 190],
      [188, 191, 190],
      [NaN, 189, 190],
    ] as const) {
      expect(disordered(low, used, high)).toMatchObject([
        {
          ...{ code: 'fat.saponification-disordered', title: ownOlive.title, low, used, high },
          ...{ value: { low, used, high }, isAsNaoh: false },
          accepted: { kind: 'range', low: 20, high: 600, unit: 'mg KOH/g' },
        },
      ]);
    }
  });

  it('knows the figure of a sheet in grams of NaOH for a gram of fat', () => {
    expect(disordered(0.134, 0.135, 0.136)).toMatchObject([{ isAsNaoh: true }]);
    expect(disordered(0, 0, 0)).toMatchObject([{ isAsNaoh: false }]);
    expect(disordered(19, 19.5, 20)).toMatchObject([{ isAsNaoh: false }]);
  });

  const profile = (fattyAcidsPercent: Readonly<Record<string, number>>) =>
    checkFat({ ...ownOlive, confirmed: true, fattyAcidsPercent });

  it.each([
    ['oleic', 'C18:1'],
    ['Palmitic acid', 'C16:0'],
    ['LAURIC', 'C12:0'],
  ])('says how %s is written here', (name, isCalled) => {
    expect(profile({ 'C18:2': 10, [name]: 70 })).toMatchObject([
      {
        ...{ code: 'fat.unknown-fatty-acid', path: ['fattyAcidsPercent', name], value: 70 },
        ...{ name, share: 70, isCalled },
      },
    ]);
  });

  it('makes no guess at an acid that it has never heard of', () => {
    const [issue] = profile({ moonic: 3 });
    expect(issue).toMatchObject({ code: 'fat.unknown-fatty-acid', name: 'moonic' });
    expect(issue).not.toHaveProperty('isCalled');
  });

  it('lets rounded shares come to 100.5 %, and an acid be absent', () => {
    expect(profile({ 'C18:1': 100.5, 'C18:2': 0 })).toEqual([]);
    expect(profile({ 'C18:1': 100.6 })).toMatchObject([
      {
        ...{ code: 'fat.fatty-acids-over-100', value: 100.6, sum: 100.6, title: ownOlive.title },
        accepted: { kind: 'range', low: 0, high: 100, unit: '%' },
      },
    ]);
    expect(profile({ 'C18:1': NaN })).toMatchObject([{ code: 'fat.unknown-fatty-acid' }]);
  });

  it.each<[string, 'densityGPerMl' | 'expansionGPerMlPerC', number, number, string]>([
    ['fat.density-out-of-range', 'densityGPerMl', 0.8, 1.1, 'g/mL'],
    ['fat.expansion-out-of-range', 'expansionGPerMlPerC', 0.0003, 0.0015, 'g/mL per °C'],
  ])('says what it takes: %s', (code, field, low, high, unit) => {
    const checked = (value: number) => checkFat({ ...ownOlive, confirmed: true, [field]: value });
    for (const value of [low, high]) expect(checked(value)).toEqual([]);
    for (const value of [low * 0.99, high * 1.01, NaN]) {
      expect(checked(value)).toMatchObject([
        {
          ...{ code, path: [field], value, found: value, title: ownOlive.title },
          accepted: { kind: 'range', low, high, unit },
        },
      ]);
    }
  });

  it.each<[string, 'iodine' | 'unsaponifiablePercent', number, string]>([
    ['fat.iodine-disordered', 'iodine', 250, 'g/100 g'],
    ['fat.unsaponifiable-disordered', 'unsaponifiablePercent', 60, '%'],
  ])('takes limits that are in order, and says which: %s', (code, field, top, unit) => {
    const checked = (low: number, high: number) =>
      checkFat({ ...ownOlive, confirmed: true, [field]: { low, high } });
    for (const [low, high] of [
      [0, top],
      [top, top],
      [0, 0],
    ] as const) {
      expect(checked(low, high)).toEqual([]);
    }
    for (const [low, high] of [
      [-0.1, 10],
      [10, 9],
      [0, top + 0.1],
      [NaN, 10],
    ] as const) {
      expect(checked(low, high)).toMatchObject([
        {
          ...{ code, path: [field], value: { low, high }, low, high, title: ownOlive.title },
          accepted: { kind: 'range', low: 0, high: top, unit },
        },
      ]);
    }
  });

  /** Olive oil takes about 190 mg KOH/g; 210 is possible, and unlikely. */
  it('asks about what is unlikely until it is confirmed, and not about what it refuses', () => {
    const doubtful = { ...ownOlive, saponificationMgKohPerG: { low: 210, used: 210, high: 210 } };
    expect(checkFat(doubtful)).toMatchObject([{ code: 'fat.saponification-doubtful' }]);
    expect(checkFat({ ...doubtful, confirmed: true })).toEqual([]);
    expect(checkFat({ ...doubtful, densityGPerMl: 913 })).toMatchObject([
      { code: 'fat.density-out-of-range' },
    ]);
  });

  it('names every slip at once', () => {
    const fat = { ...ownOlive, densityGPerMl: 913, iodine: { low: 90, high: 80 } };
    expect(checkFat(fat).map(({ code }) => code)).toEqual([
      'fat.density-out-of-range',
      'fat.iodine-disordered',
    ]);
  });

  it.each(refused)('refuses %s even if confirmed', (code, change) => {
    expect(checkFat({ ...ownOlive, ...change, confirmed: true })).toMatchObject([{ code }]);
  });
});
