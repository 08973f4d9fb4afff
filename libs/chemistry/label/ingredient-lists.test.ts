import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable, ingredientLists, type BatterRecipe, type IngredientLists } from '#chemistry';
import { anyRecipe } from '../../../tests/support/any-recipe.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

const plain: BatterRecipe = {
  fats: [
    { fat: 'olive', percent: 70 },
    { fat: 'coconut', percent: 30 },
  ],
  ...{ lyeConcentrationPercent: 33, superfatPercent: 5, naohPurityPercent: 100 },
  ...{ sodiumLactatePercent: 0, saltPercent: 0, sugarPercent: 0, batterTemperatureC: 38 },
};

function listsOf(recipe: BatterRecipe, fatsG = 1000): IngredientLists {
  const batch = batchForFats(recipe, fats, fatsG);
  if (!batch.ok) throw new Error(batch.issues.map(({ code }) => code).join(', '));
  return ingredientLists(recipe, fats, batch.value);
}

const names = (list: IngredientLists['asSoap']): string[] => list.map(({ inci, title }) => inci ?? title);
const massOf = (list: IngredientLists['asSoap'], name: string): number =>
  list.find(({ inci, title }) => (inci ?? title) === name)?.massG ?? 0;

/**
 * Worked by hand with the middles of the ranges of CXS 210 and CXS 33 and molar masses of any textbook (NaOH 40.00, KOH 56.11,
 * glycerol 92.09): 700 g of olive oil of 190 mg KOH/g and 300 g of coconut oil of 256.5, of which 95 % react.
 *   olive    700 · 0.95 · 0.190  / 56.11 = 2.252 mol: 90.07 g NaOH, 69.13 g glycerol, 685.9 g soap, 35 g left
 *   coconut  300 · 0.95 · 0.2565 / 56.11 = 1.303 mol: 52.11 g NaOH, 40.00 g glycerol, 297.1 g soap, 15 g left
 *   NaOH 142.2 g, in lye of 33 % with 288.7 g of water
 */
describe('the ingredients of olive and coconut oil', () => {
  const { asPutIn, asSoap } = listsOf(plain);
  const [olive, coconut] = ['Olea Europaea Fruit Oil', 'Cocos Nucifera Oil'];

  it('are what was put in, by mass', () => {
    expect(names(asPutIn)).toEqual([olive, coconut, 'Aqua', 'Sodium Hydroxide']);
    expect(massOf(asPutIn, 'Sodium Hydroxide')).toBeCloseTo(142.2, 0);
    expect(massOf(asPutIn, 'Aqua')).toBeCloseTo(288.7, 0);
  });

  it('are what becomes of it, by mass', () => {
    expect(names(asSoap)).toEqual([
      ...['Sodium Olivate', 'Sodium Cocoate', 'Aqua', 'Glycerin', olive, coconut],
    ]);
    expect(asSoap.map(({ massG }) => massG)).toEqual(
      [685.9, 297.1, 288.7, 109.1, 35, 15].map((grams) => expect.closeTo(grams, 0) as number),
    );
  });
});

it('names soaps of both alkalis, by moles', () => {
  const { asPutIn, asSoap } = listsOf({ ...plain, kohSharePercent: 50, kohPurityPercent: 100 });
  // Weighed as much as moles and molar masses say: 0.5 · 40.00 and 0.5 · 56.11.
  const [soda, potash] = ['Sodium Hydroxide', 'Potassium Hydroxide'].map((name) => massOf(asPutIn, name));
  expect(potash! / soda!).toBeCloseTo(56.11 / 40, 3);
  const both = massOf(asSoap, 'Sodium Olivate') + massOf(asSoap, 'Potassium Olivate');
  expect(massOf(asSoap, 'Potassium Olivate')).toBeGreaterThan(both / 2);
  expect(massOf(asSoap, 'Potassium Olivate')).toBeLessThan(both * 0.53);
});

it('makes water, not glycerol, of free acids, and keeps the name of a wax', () => {
  const stearic = listsOf({ ...plain, fats: [{ fat: 'stearic-acid', percent: 100 }] }).asSoap;
  expect(names(stearic)).not.toContain('Glycerin');
  const wax = listsOf({
    ...plain,
    fats: [
      { fat: 'olive', percent: 95 },
      { fat: 'beeswax', percent: 5 },
    ],
  });
  expect(names(wax.asSoap)).toContain('Cera Alba');
  expect(massOf(wax.asSoap, 'Cera Alba')).toBeGreaterThanOrEqual(massOf(wax.asPutIn, 'Cera Alba'));
});

it('makes a salt of an acid, and lists lye that is left', () => {
  const citric = listsOf({ ...plain, acids: [{ acid: 'citric-acid', percent: 2 }] });
  expect(massOf(citric.asPutIn, 'Citric Acid')).toBeCloseTo(20, 9);
  // Trisodium citrate, 258.07 g/mol, of citric acid, 192.12 g/mol.
  expect(massOf(citric.asSoap, 'Sodium Citrate')).toBeCloseTo((20 * 258.07) / 192.12, 1);
  expect(massOf(citric.asSoap, 'Sodium Hydroxide')).toBe(0);
  const excess = listsOf({ ...plain, superfatPercent: -5, lyeExcessIntended: true });
  // 5 % of the 149.7 g that all of the fats take.
  expect(massOf(excess.asSoap, 'Sodium Hydroxide')).toBeCloseTo(7.5, 1);
});

it('has perfumes together, water once, and colours last however much of them there is', () => {
  const { asPutIn } = listsOf({
    ...plain,
    sodiumLactatePercent: 2,
    fragrances: [
      { key: 'a', title: 'A', percent: 2 },
      { key: 'b', title: 'B', percent: 1, kind: 'essential-oil' },
    ],
    colourants: [{ key: 'clay', title: 'Red clay', percent: 9, carrier: { kind: 'water', perGram: 2 } }],
    additions: [{ key: 'oats', title: 'Oats', percent: 0.5, kind: 'scrub' }],
  });
  expect(names(asPutIn).slice(-1)).toEqual(['Red clay']);
  expect(names(asPutIn).filter((name) => name === 'Aqua')).toHaveLength(1);
  expect(massOf(asPutIn, 'Parfum')).toBeCloseTo(30, 9);
  expect(massOf(asPutIn, 'Sodium Lactate')).toBeCloseTo(12, 9);
  expect(asPutIn.find(({ title }) => title === 'Oats')).not.toHaveProperty('inci');
});

it('weighs what the batch weighs, both ways, and never rises down the list', () => {
  fc.assert(
    fc.property(anyRecipe, (recipe) => {
      const batch = batchForFats(recipe, fats, 1000);
      if (!batch.ok) throw new Error('the recipe is unsound');
      const { asPutIn, asSoap } = ingredientLists(recipe, fats, batch.value);
      for (const list of [asPutIn, asSoap]) {
        const total = list.reduce((sum, { massG }) => sum + massG, 0);
        expect(total).toBeCloseTo(batch.value.batchG, 4);
        const others = list.filter(({ isColourant }) => isColourant !== true);
        expect(others.every((each, i) => i === 0 || each.massG <= others[i - 1]!.massG)).toBe(true);
      }
    }),
  );
});
