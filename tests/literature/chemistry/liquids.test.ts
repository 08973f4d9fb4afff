import { describe, expect, it } from 'vitest';
import { liquidTable, shippedFats, shippedLiquids } from '#chemistry';

const figuresOf = (key: string) => {
  const liquid = liquidTable.get(key);
  if (liquid === undefined) throw new Error(`no liquid ${key}`);
  return liquid;
};

/**
 * USDA National Nutrient Database for Standard Reference, abridged file: food number, then water, protein, fat and sugars, g in
 * 100 g. Typed from a copy of the file and not from ours. Sheep's milk has no figure for sugars there; its carbohydrate is lactose.
 * Ferments turn some of the sugar into acid, so theirs is not compared.
 */
const standardReference: readonly (readonly [string, string, number, number, number, number | undefined])[] =
  [
    ['skimmed-milk', '01085', 90.84, 3.37, 0.08, 5.09],
    ['buttermilk', '01088', 90.13, 3.31, 0.88, undefined],
    ['goat-milk', '01106', 87.03, 3.56, 4.14, 4.45],
    ['sheep-milk', '01109', 80.7, 5.98, 7, 5.36],
    ['yoghurt', '01116', 87.9, 3.47, 3.25, undefined],
    ['carrot-puree', '11124', 88.29, 0.93, 0.24, 4.74],
    ['pumpkin-puree', '11422', 91.6, 1, 0.1, 1.36],
    ['tomato-puree', '11529', 94.52, 0.88, 0.2, 2.63],
  ];

/**
 * FAO, Milk and Dairy Products in Human Nutrition (2013), Table 3.1, from tables of several countries: water, fat and lactose, g
 * in 100 g, as ranges.
 */
const milksOfManyTables = [
  ['cow-milk', [87.3, 88.1], [3.1, 3.3], [4.5, 5.1]],
  ['goat-milk', [86.4, 89], [3.3, 4.5], [4.2, 4.5]],
  ['sheep-milk', [80.7, 83], [5.8, 7], [4.5, 5.4]],
] as const;

/** FAO, Food Composition Tables for International Use (1949): the same, beside 4.1 g of sugar in cream of a fifth fat. */
const milksOf1949 = [
  ['cow-milk', 87.3, 3.5],
  ['goat-milk', 86.4, 4.5],
  ['sheep-milk', 82.3, 6.5],
] as const;

describe('the table of liquids', () => {
  it.each(standardReference)(
    'has %s as food %s of the database has it',
    (key, number, water, protein, fat, sugar) => {
      const { figures, evidence } = figuresOf(key);
      expect([figures.waterG, figures.proteinG, figures.fatG]).toEqual([water, protein, fat]);
      if (sugar !== undefined) expect(figures.sugarG).toBe(sugar);
      expect(evidence.figures).toEqual({
        kind: 'published',
        source: expect.stringContaining(number) as string,
      });
    },
  );

  it.each(milksOfManyTables)('has %s within the tables of several countries', (key, water, fat, lactose) => {
    const { waterG, fatG, sugarG } = figuresOf(key).figures;
    for (const [value, [low, high]] of [
      [waterG, water],
      [fatG, fat],
      [sugarG, lactose],
    ] as const) {
      // Rounded to a tenth there.
      expect(value).toBeGreaterThanOrEqual(low - 0.05);
      expect(value).toBeLessThanOrEqual(high + 0.05);
    }
  });

  it.each(milksOf1949)('has ranges for %s that hold an older table', (key, water, fat) => {
    const { ranges } = figuresOf(key);
    const holds = ([low, high]: readonly [number, number] = [NaN, NaN], value: number): boolean =>
      low <= value && value <= high;
    expect([holds(ranges.waterG, water), holds(ranges.fatG, fat)]).toEqual([true, true]);
  });

  /** Norwegian Food Composition Table 2026, 13.123: oat drink with 86.0 g of water, 0.8 g of fat and 1.3 g of protein. */
  it('has a range for oat drink that holds another country’s', () => {
    const { ranges } = figuresOf('oat-drink');
    expect(ranges.waterG?.[0]).toBeLessThanOrEqual(86);
    expect(ranges.fatG?.[0]).toBeLessThanOrEqual(0.8);
  });

  /** 102 samples of goat's milk: 0.164 % on average as lactic acid, 0.126 to 0.195 (Fandialan and Davide 2001). */
  it('has the acidity of goat’s milk', () => {
    const { figures, ranges } = figuresOf('goat-milk');
    expect(figures.acid?.grams).toBeCloseTo(0.164, 2);
    expect(ranges.acidG).toEqual([0.126, 0.195]);
  });

  it('has figures that come to at most 100 g, within their own ranges, with a fat that ships', () => {
    const fats = new Set(shippedFats.map(({ key }) => key));
    for (const { key, figures, ranges, fat } of shippedLiquids) {
      const { acid, ...rest } = figures;
      const sum = Object.values(rest).reduce((total, each) => total + each, acid?.grams ?? 0);
      expect(sum, key).toBeLessThanOrEqual(100.001);
      expect(sum, key).toBeGreaterThan(75);
      const all = { ...figures, acidG: acid?.grams ?? 0 };
      for (const [name, [low, high]] of Object.entries(ranges)) {
        const value = all[name as 'waterG' | 'fatG' | 'sugarG' | 'acidG'];
        expect(value, `${key} ${name}`).toBeGreaterThanOrEqual(low);
        expect(value, `${key} ${name}`).toBeLessThanOrEqual(high + 0.05);
      }
      if (fat !== undefined) expect(fats.has(fat), key).toBe(true);
    }
  });

  it('has keys that no fat has, as both are looked up by their names', () => {
    const fats = new Set(shippedFats.map(({ key }) => key));
    expect(shippedLiquids.filter(({ key }) => fats.has(key))).toEqual([]);
    expect(new Set(shippedLiquids.map(({ key }) => key)).size).toBe(shippedLiquids.length);
  });
});
