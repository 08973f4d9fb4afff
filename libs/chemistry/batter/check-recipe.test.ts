import { describe, expect, it } from 'vitest';
import { checkRecipe, fatTable, type BatterRecipe } from '#chemistry';
import { scent } from '../../../tests/support/scent.js';

const fats = fatTable([]);

const sound: BatterRecipe = {
  fats: [
    { fat: 'olive', percent: 60 },
    { fat: 'coconut', percent: 40 },
  ],
  lyeConcentrationPercent: 33,
  superfatPercent: 5,
  naohPurityPercent: 99,
  sodiumLactatePercent: 2,
  saltPercent: 0,
  sugarPercent: 0,
  fragrances: [{ key: 'sea', title: 'Sea air', percent: 3 }],
  batterTemperatureC: 38,
};

/** Each field with a value just outside, the two limits themselves, and the code of its issue. */
const limits = [
  ['lyeConcentrationPercent', 'lye.concentration-out-of-range', 20, 50],
  ['superfatPercent', 'lye.superfat-out-of-range', 0, 25],
  ['naohPurityPercent', 'lye.purity-out-of-range', 80, 100],
  ['sodiumLactatePercent', 'recipe.sodium-lactate-out-of-range', 0, 5],
  ['saltPercent', 'recipe.salt-out-of-range', 0, 100],
  ['sugarPercent', 'recipe.sugar-out-of-range', 0, 5],
  ['batterTemperatureC', 'batter.temperature-out-of-range', 15, 90],
] as const;

describe('checkRecipe', () => {
  it('has nothing against a sound recipe', () => {
    expect(checkRecipe(sound, fats)).toEqual([]);
  });

  it.each(limits)('holds %s within its limits (%s)', (field, code, low, high) => {
    for (const value of [low, high]) expect(checkRecipe({ ...sound, [field]: value }, fats)).toEqual([]);
    for (const value of [low - 0.01, high + 0.01, NaN]) {
      const issues = checkRecipe({ ...sound, [field]: value }, fats);
      expect(issues).toHaveLength(1);
      expect(issues[0]).toMatchObject({ code, path: [field], value, accepted: { kind: 'range', low, high } });
    }
  });

  const mica = { key: 'a', title: 'Blue', percent: 1 };
  const clay = { key: 'c', title: 'White clay', percent: 1, kind: 'clay' } as const;
  const acetic = { acid: 'acetic-acid', percent: 1, strengthPercent: 100 } as const;
  const withPotash = (kohPurityPercent: number) => ({ kohSharePercent: 20, kohPurityPercent });

  /** The limits of what may be left out or come more than once. */
  it.each<[code: string, (value: number) => Partial<BatterRecipe>, low: number, high: number, unit: string]>([
    ['recipe.koh-share-out-of-range', (v) => ({ ...withPotash(90), kohSharePercent: v }), 0, 100, '%'],
    ['lye.purity-out-of-range', withPotash, 80, 100, '%'],
    ['recipe.fragrance-out-of-range', (v) => ({ fragrances: [scent({ percent: v })] }), 0, 10, '%'],
    ['recipe.acid-out-of-range', (v) => ({ acids: [{ ...acetic, percent: v }] }), 0, 50, '%'],
    [
      'recipe.acid-strength-out-of-range',
      (v) => ({ acids: [{ ...acetic, strengthPercent: v }] }),
      1,
      100,
      '%',
    ],
    ['recipe.colourant-out-of-range', (v) => ({ colourants: [{ ...mica, percent: v }] }), 0, 10, '%'],
    ['recipe.addition-out-of-range', (v) => ({ additions: [{ ...clay, percent: v }] }), 0, 50, '%'],
    ['batter.temperature-out-of-range', (v) => ({ batterTemperatureC: v }), 15, 90, '°C'],
  ])('says what it takes for %s', (code, change, low, high, unit) => {
    for (const value of [low, high]) expect(checkRecipe({ ...sound, ...change(value) }, fats)).toEqual([]);
    for (const value of [low - 0.1, high + 0.1]) {
      expect(checkRecipe({ ...sound, ...change(value) }, fats)).toMatchObject([
        { code, value, found: value, unit, accepted: { kind: 'range', low, high, unit } },
      ]);
    }
  });

  it('points at the share of KOH, and at the acid', () => {
    expect(checkRecipe({ ...sound, ...withPotash(90), kohSharePercent: 101 }, fats)).toMatchObject([
      { path: ['kohSharePercent'] },
    ]);
    const acids = [acetic, { ...acetic, percent: 51 }];
    expect(checkRecipe({ ...sound, acids }, fats)).toMatchObject([{ path: ['acids', 1, 'percent'] }]);
  });

  it('says which of the colours, additions and alkalis it means', () => {
    const issues = checkRecipe(
      {
        ...sound,
        ...withPotash(79),
        naohPurityPercent: 101,
        colourants: [{ ...mica, percent: 11 }],
        additions: [{ ...clay, percent: 51 }],
      },
      fats,
    );
    expect(issues).toMatchObject([
      { path: ['naohPurityPercent'], alkali: 'naoh' },
      { path: ['kohPurityPercent'], alkali: 'koh' },
      { title: 'Blue' },
      { title: 'White clay' },
    ]);
  });

  it('does not guess how strong an acid is that is sold in water', () => {
    const acids = [
      { acid: 'citric-acid', percent: 1 },
      { acid: 'lactic-acid', percent: 1 },
    ] as const;
    expect(checkRecipe({ ...sound, acids }, fats)).toMatchObject([
      {
        code: 'recipe.acid-strength-missing',
        path: ['acids', 1, 'strengthPercent'],
        acid: 'lactic-acid',
        accepted: { kind: 'range', low: 1, high: 100, unit: '%' },
      },
    ]);
  });

  it('asks for no purity of KOH where there is none', () => {
    expect(checkRecipe({ ...sound, kohSharePercent: 0 }, fats)).toEqual([]);
    expect(checkRecipe({ ...sound, kohSharePercent: 0.1 }, fats)).toMatchObject([
      { code: 'lye.koh-purity-missing', accepted: { kind: 'range', low: 80, high: 100, unit: '%' } },
    ]);
  });

  /**
   * NaOH for olive and coconut of 6:4 at 5 % superfat: 216.6 g KOH/kg, so 14.67 g of pure NaOH on 100 g of fats, 14.82 g
   * of flakes and 44.45 g of lye, 29.6 g of it water. A 5 % vinegar of 16 % brings 15.2 g; what it takes of alkali for
   * itself, 0.53 g, asks for 1.1 g more of water, so that 15.5 g are left for 15.4 g of flakes.
   */
  it('keeps enough water in the jug to dissolve the lye before a vinegar goes in', () => {
    const vinegar = (percent: number, replacesWater = true) => ({
      acids: [{ acid: 'acetic-acid', percent, strengthPercent: 5, replacesWater }] as const,
    });
    expect(checkRecipe({ ...sound, ...vinegar(15) }, fats)).toEqual([]);
    expect(checkRecipe({ ...sound, ...vinegar(40, false) }, fats)).toEqual([]);
    const potash = checkRecipe({ ...sound, ...withPotash(90), kohSharePercent: 60, ...vinegar(25) }, fats);
    expect(potash).toMatchObject([{ code: 'recipe.acid-for-water' }]);
    const [told] = potash;
    expect(told?.code === 'recipe.acid-for-water' && told.lyeG > told.waterG).toBe(true);
    const issues = checkRecipe({ ...sound, ...vinegar(17) }, fats);
    expect(issues).toMatchObject([
      { code: 'recipe.acid-for-water', path: ['acids', 0, 'replacesWater'], value: true },
    ]);
    const [issue] = issues;
    if (issue?.code !== 'recipe.acid-for-water') throw new Error('not refused');
    const { waterG, lyeG } = issue;
    expect(waterG).toBeLessThan(lyeG);
    expect(lyeG).toBeCloseTo(14.82 + ((17 * 0.05) / 60.052) * (39.997 / 0.99), 1);
  });

  it('points at the acid that replaces water, wherever it stands', () => {
    const acids = [
      { acid: 'citric-acid', percent: 1 },
      { acid: 'acetic-acid', percent: 30, strengthPercent: 5, replacesWater: true },
    ] as const;
    expect(checkRecipe({ ...sound, acids }, fats)).toMatchObject([{ path: ['acids', 1, 'replacesWater'] }]);
  });

  it('refuses lye left over unless it is meant, and then only a little', () => {
    const meant = { ...sound, superfatPercent: -5, lyeExcessIntended: true };
    expect(checkRecipe(meant, fats)).toEqual([]);
    expect(checkRecipe({ ...meant, lyeExcessIntended: false }, fats)).toMatchObject([
      { isExcessIntended: false, accepted: { low: 0 } },
    ]);
    expect(checkRecipe({ ...meant, superfatPercent: -5.1 }, fats)).toMatchObject([
      { code: 'lye.superfat-out-of-range', isExcessIntended: true, accepted: { low: -5, high: 25 } },
    ]);
  });

  it('does not guess the purity of KOH', () => {
    expect(checkRecipe({ ...sound, kohSharePercent: 20 }, fats)).toMatchObject([
      { code: 'lye.koh-purity-missing', path: ['kohPurityPercent'] },
    ]);
    expect(checkRecipe({ ...sound, kohSharePercent: 20, kohPurityPercent: 90 }, fats)).toEqual([]);
    expect(checkRecipe({ ...sound, kohSharePercent: 20, kohPurityPercent: 101 }, fats)).toMatchObject([
      { code: 'lye.purity-out-of-range', path: ['kohPurityPercent'], value: 101 },
    ]);
  });

  it('holds acids, colours and additions within their limits, each in its place', () => {
    const colourants = [
      { key: 'a', title: 'Blue', percent: 1 },
      { key: 'b', title: 'Green', percent: 11 },
    ];
    const acids = [{ acid: 'citric-acid', percent: 1, strengthPercent: 0 }] as const;
    const additions = [{ key: 'c', title: 'Clay', percent: 51, kind: 'clay' }] as const;
    expect(checkRecipe({ ...sound, colourants, acids, additions }, fats)).toMatchObject([
      { path: ['acids', 0, 'strengthPercent'], value: 0 },
      { path: ['colourants', 1, 'percent'], value: 11 },
      { path: ['additions', 0, 'percent'], value: 51 },
    ]);
  });

  it('holds all fragrances together within the limit of one', () => {
    const fragrances = [scent({ percent: 4 }), scent({ percent: 6 })];
    expect(checkRecipe({ ...sound, fragrances }, fats)).toEqual([]);
    expect(checkRecipe({ ...sound, fragrances: [...fragrances, scent({ percent: 1 })] }, fats)).toMatchObject(
      [{ code: 'recipe.fragrances-out-of-range', path: ['fragrances'], value: 11 }],
    );
    expect(checkRecipe({ ...sound, fragrances: [scent({ percent: 11 })] }, fats)).toMatchObject([
      { code: 'recipe.fragrance-out-of-range', path: ['fragrances', 0, 'percent'], title: 'Sea air' },
    ]);
  });

  it.each([
    ['Linalol', 'Linalool'],
    ['D-Limonene', 'Limonene'],
    ['citronelol', 'Citronellol'],
    ['lavender oil', 'Lavandula Oil/Extract'],
  ])('names the allergen %s that is not on the list, and suggests %s', (typed, meant) => {
    const allergens = [
      { name: 'LIMONENE', percent: 20 },
      { name: typed, percent: 1 },
    ];
    const issues = checkRecipe({ ...sound, fragrances: [scent({ percent: 3, allergens })] }, fats);
    const path = ['fragrances', 0, 'allergens', 1, 'name'];
    expect(issues).toMatchObject([{ code: 'recipe.unknown-allergen', path, value: typed }]);
    const [issue] = issues;
    expect(issue?.code === 'recipe.unknown-allergen' && issue.nearest).toContain(meant);
  });

  it('refuses more allergens in a fragrance than all of it', () => {
    const allergens = [
      { name: 'Limonene', percent: 60 },
      { name: 'Linalool', percent: 41 },
    ];
    expect(checkRecipe({ ...sound, fragrances: [scent({ percent: 3, allergens })] }, fats)).toMatchObject([
      { code: 'recipe.allergens-over-100', path: ['fragrances', 0, 'allergens'], sum: 101, title: 'Sea air' },
    ]);
  });

  it('refuses shares that are no shares, and says where', () => {
    const mix = [
      { fat: 'olive', percent: 120 },
      { fat: 'coconut', percent: -20 },
    ];
    expect(checkRecipe({ ...sound, fats: mix }, fats)).toMatchObject([
      {
        ...{ code: 'recipe.fat-share-out-of-range', path: ['fats', 0, 'percent'], value: 120, fat: 'olive' },
        accepted: { kind: 'range', low: 0, high: 100, isOpen: true, unit: '%' },
      },
      { code: 'recipe.fat-share-out-of-range', path: ['fats', 1, 'percent'], value: -20, fat: 'coconut' },
    ]);
    expect(checkRecipe({ ...sound, fats: [] }, fats)).toMatchObject([
      { code: 'recipe.no-fats', path: ['fats'], value: [] },
    ]);
    const whole = [
      { fat: 'olive', percent: 100 },
      { fat: 'coconut', percent: 0 },
    ];
    expect(checkRecipe({ ...sound, fats: whole }, fats)).toMatchObject([{ path: ['fats', 1, 'percent'] }]);
    expect(checkRecipe({ ...sound, fats: [{ fat: 'olive', percent: 50 }] }, fats)).toMatchObject([
      {
        ...{ code: 'recipe.shares-not-100', path: ['fats'], value: 50, sum: 50 },
        accepted: { kind: 'range', low: 99.5, high: 100.5, unit: '%' },
      },
    ]);
    const notANumber = checkRecipe({ ...sound, fats: [{ fat: 'olive', percent: NaN }] }, fats);
    expect(notANumber.map(({ code }) => code)).toEqual([
      'recipe.fat-share-out-of-range',
      'recipe.shares-not-100',
    ]);
  });

  const inGrams = [
    { fat: 'olive', grams: 600 },
    { fat: 'coconut', grams: 400 },
  ];

  it.each([
    ['missing', [{ fat: 'olive' }], [0]],
    ['twice', [{ fat: 'olive', percent: 100, grams: 500 }], [0]],
    ['mixed', [{ fat: 'olive', percent: 60 }, inGrams[1]!], [1]],
  ] as const)('refuses an amount of a fat that is %s', (problem, mix, [at]) => {
    const issues = checkRecipe({ ...sound, fats: mix }, fats);
    expect(issues).toContainEqual(
      expect.objectContaining({ code: 'recipe.fat-amount-unclear', path: ['fats', at], problem }),
    );
  });

  it('takes fats in grams, whatever they add up to, and none without weight', () => {
    expect(checkRecipe({ ...sound, fats: inGrams }, fats)).toEqual([]);
    const nothing = [...inGrams, { fat: 'palm', grams: 0 }];
    expect(checkRecipe({ ...sound, fats: nothing }, fats)).toMatchObject([
      { code: 'recipe.fat-mass-out-of-range', path: ['fats', 2, 'grams'], fat: 'palm' },
    ]);
  });

  it('lets one of its own fats set the size of the batch, and no other', () => {
    const by = (fat: string, grams: number) => ({ ...sound, size: { by: 'fat', fat, grams } as const });
    expect(checkRecipe(by('coconut', 250), fats)).toEqual([]);
    expect(checkRecipe(by('palm', 250), fats)).toMatchObject([
      { code: 'recipe.size-of-other-fat', path: ['size', 'fat'], value: 'palm' },
    ]);
    // 40 % of the fats weigh 400 001 g, so all of them weigh more than a thousand kilograms.
    expect(checkRecipe(by('coconut', 400_001), fats)).toMatchObject([
      {
        code: 'recipe.size-out-of-range',
        path: ['size', 'grams'],
        fatsG: expect.closeTo(1_000_002.5, 6) as number,
      },
    ]);
  });

  it('refuses one fat under two shares', () => {
    const mix = [
      { fat: 'olive', percent: 60 },
      { fat: 'olive', percent: 40 },
    ];
    expect(checkRecipe({ ...sound, fats: mix }, fats)).toMatchObject([
      { code: 'recipe.fat-twice', path: ['fats', 1, 'fat'], value: 'olive' },
    ]);
  });
});

describe('a superfat above 25 %', () => {
  /** Salt bars and soaps for very dry skin: common practice, no source. */
  it('is accepted up to 40 % with a reason, and refused without one', () => {
    const rich = { ...sound, superfatPercent: 40 };
    const reason = { superfatReason: 'A salt bar of coconut oil' };
    expect(checkRecipe(rich, fats)).toMatchObject([
      { code: 'lye.superfat-out-of-range', accepted: { high: 25 } },
    ]);
    expect(checkRecipe({ ...rich, ...reason }, fats)).toEqual([]);
    expect(checkRecipe({ ...rich, ...reason, superfatPercent: 40.1 }, fats)).toMatchObject([
      { code: 'lye.superfat-out-of-range', accepted: { high: 40 } },
    ]);
  });
});
