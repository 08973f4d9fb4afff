import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable, givenFatsG, type BatterRecipe } from '#chemistry';
import { anyRecipe } from '../../../tests/support/any-recipe.js';
import { plainRecipe as plain } from '../../../tests/support/plain-recipe.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

const massesOf = (recipe: BatterRecipe, fatsG: number): number[] => {
  const batch = batchForFats(recipe, fats, fatsG);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return [...batch.value.fats.map(({ massG }) => massG), batch.value.naohG, batch.value.waterG];
};

describe('the fats of a recipe', () => {
  it('make the same batch in grams as in shares', () => {
    fc.assert(
      fc.property(anyRecipe, fc.double({ min: 1, max: 30, noNaN: true }), (recipe, scale) => {
        const inGrams = recipe.fats.map(({ fat, percent = 0 }) => ({ fat, grams: percent * scale }));
        const written = massesOf({ ...recipe, fats: inGrams }, 1000);
        massesOf(recipe, 1000).forEach((massG, i) => {
          expect(Math.abs((written[i] ?? NaN) - massG)).toBeLessThan(1e-9 * Math.max(1, massG));
        });
      }),
    );
  });

  /** 33.3 + 33.3 + 33.3 are thirds: 1000 g of fats, 333.33 g of each. */
  it('are taken as they stand to each other where they miss 100 %', () => {
    const thirds = ['olive', 'coconut', 'palm'].map((fat) => ({ fat, percent: 33.3 }));
    for (const massG of massesOf({ ...plain, fats: thirds }, 1000).slice(0, 3)) {
      expect(massG).toBeCloseTo(1000 / 3, 9);
    }
  });

  /** 250 g of a fat that is 30 % of all: 833.33 g. */
  it.each([
    ['as the pieces need', undefined, undefined],
    ['as the pieces need', { by: 'pieces' }, undefined],
    ['as given', { by: 'fats', grams: 1200 }, 1200],
    ['so that one of them is used up', { by: 'fat', fat: 'coconut', grams: 250 }, 250 / 0.3],
  ] as const)('weigh %s together', (_, size, expected) => {
    const told = givenFatsG({ fats: plain.fats, size });
    if (expected === undefined) expect(told).toBeUndefined();
    else expect(told).toBeCloseTo(expected, 9);
  });

  it('give a fat that sets the scale just the mass that is left of it', () => {
    fc.assert(
      fc.property(anyRecipe, fc.double({ min: 1, max: 5000, noNaN: true }), (recipe, grams) => {
        const fat = recipe.fats[0]?.fat ?? '';
        const fatsG = givenFatsG({ ...recipe, size: { by: 'fat', fat, grams } }) ?? NaN;
        fc.pre(fatsG <= 1_000_000);
        expect(massesOf(recipe, fatsG)[0]).toBeCloseTo(grams, 6);
      }),
    );
  });
});
