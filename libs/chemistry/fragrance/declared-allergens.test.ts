import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allergenNames,
  batchForFats,
  fatTable,
  RINSE_OFF_THRESHOLD_PERCENT,
  type Fragrance,
} from '#chemistry';
import { plainRecipe as plain } from '../../../tests/support/plain-recipe.js';
import { scent } from '../../../tests/support/scent.js';

const fats = fatTable([]);

const batchOf = (fragrances: readonly Fragrance[]) => {
  const batch = batchForFats({ ...plain, fragrances }, fats, 1000);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return batch.value;
};

describe('the allergens that a label names', () => {
  /**
   * Regulation (EU) 2023/1545: above 0.01 % in products that are rinsed off; 24 names before it and 56 new ones, of which
   * turpentine comes as oil and as rectified oil under one name.
   */
  it('go by the list of the regulation and its threshold', () => {
    expect(RINSE_OFF_THRESHOLD_PERCENT).toBe(0.01);
    expect(new Set(allergenNames).size).toBe(allergenNames.length);
    expect(allergenNames.length).toBeGreaterThanOrEqual(80);
    for (const banned of ['Butylphenyl Methylpropional', 'Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde']) {
      expect(allergenNames).not.toContain(banned);
    }
  });

  /**
   * 1000 g of fats with 142.187 g of NaOH (see the batch by hand) and 30 g of fragrance are 1172.187 g when dry. 40 % of
   * limonene in 30 g are 12 g: 1.0237 %. 0.3 % of coumarin are 0.09 g: 0.00768 %, below the threshold.
   */
  it('are told as shares of the dry soap, above the threshold alone', () => {
    const allergens = [
      { name: 'limonene', percent: 40 },
      { name: 'Coumarin', percent: 0.3 },
    ];
    const { allergens: declared } = batchOf([scent({ percent: 3, allergens })]);
    expect(declared.map(({ name }) => name)).toEqual(['Limonene']);
    expect(declared[0]?.percent).toBeCloseTo((100 * 12) / 1172.187, 3);
  });

  it('add up over fragrances, so that two below the threshold may come above it', () => {
    const allergens = [{ name: 'Coumarin', percent: 0.3 }];
    const one = scent({ percent: 3, allergens });
    expect(batchOf([one]).allergens).toEqual([]);
    const { allergens: both } = batchOf([one, scent({ percent: 2, allergens })]);
    expect(both).toEqual([
      { name: 'Coumarin', percent: expect.closeTo((100 * 0.15) / 1192.187, 4) as number },
    ]);
  });

  it('are the same however a dose is split between bottles of one oil', () => {
    const allergens = [{ name: 'Linalool', percent: 25 }];
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 4.9, noNaN: true }), (first) => {
        const split = [first, 5 - first].map((percent) => scent({ percent, allergens }));
        const [whole] = batchOf([scent({ percent: 5, allergens })]).allergens;
        expect(batchOf(split).allergens[0]?.percent).toBeCloseTo(whole?.percent ?? NaN, 9);
      }),
      { seed: 1, numRuns: 30 },
    );
  });
});
