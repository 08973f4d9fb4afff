import { describe, expect, it } from 'vitest';
import { checkRecipe, fatTable, type BatterRecipe } from '#chemistry';

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
  fragrance: { percent: 3 },
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
  ['batterTemperatureC', 'batter.temperature-out-of-range', 20, 75],
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

  it('holds the fragrance within its limit', () => {
    expect(checkRecipe({ ...sound, fragrance: undefined }, fats)).toEqual([]);
    expect(checkRecipe({ ...sound, fragrance: { percent: 10 } }, fats)).toEqual([]);
    expect(checkRecipe({ ...sound, fragrance: { percent: 11 } }, fats)).toMatchObject([
      { code: 'recipe.fragrance-out-of-range', path: ['fragrance', 'percent'], value: 11 },
    ]);
  });

  it.each([
    ['cocnut', 'coconut'],
    ['shea', 'shea-butter'],
    ['canola', 'rapeseed'],
    ['olive-oil', 'olive'],
    ['bees-wax', 'beeswax'],
  ])('names the unknown fat %s and suggests %s', (typed, meant) => {
    const issues = checkRecipe({ ...sound, fats: [{ fat: typed, percent: 100 }] }, fats);
    expect(issues).toMatchObject([{ code: 'recipe.unknown-fat', path: ['fats', 0, 'fat'], value: typed }]);
    const [issue] = issues;
    expect(issue?.code === 'recipe.unknown-fat' && issue.nearest[0]).toBe(meant);
  });

  it.each([
    [[33.3, 33.3, 33.35], []],
    [[33.35, 33.35, 33.35], []],
    [[33.3, 33.3, 33.3], ['recipe.shares-not-100']],
    [[50, 50, 0.06], ['recipe.shares-not-100']],
  ])('lets shares %j miss 100 by 0.05 and no more', (shares, codes) => {
    const keys = ['olive', 'coconut', 'palm'];
    const mix = shares.map((percent, index) => ({ fat: keys[index] ?? '', percent }));
    expect(checkRecipe({ ...sound, fats: mix }, fats).map(({ code }) => code)).toEqual(codes);
  });

  it('refuses shares that are no shares, and says where', () => {
    const mix = [
      { fat: 'olive', percent: 120 },
      { fat: 'coconut', percent: -20 },
    ];
    expect(checkRecipe({ ...sound, fats: mix }, fats)).toMatchObject([
      { code: 'recipe.fat-share-out-of-range', path: ['fats', 0, 'percent'], value: 120 },
      { code: 'recipe.fat-share-out-of-range', path: ['fats', 1, 'percent'], value: -20 },
    ]);
    expect(checkRecipe({ ...sound, fats: [] }, fats)).toMatchObject([{ code: 'recipe.no-fats' }]);
    const notANumber = checkRecipe({ ...sound, fats: [{ fat: 'olive', percent: NaN }] }, fats);
    expect(notANumber.map(({ code }) => code)).toEqual([
      'recipe.fat-share-out-of-range',
      'recipe.shares-not-100',
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
