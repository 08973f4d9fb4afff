import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable, type BatterRecipe } from '#chemistry';
import { calmRecipe as calm, risksOf } from '../../../tests/support/calm-recipe.js';
import { scent } from '../../../tests/support/scent.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

describe('the share of a fragrance', () => {
  const coloured = (percent: number, carrier?: { kind: 'fat' | 'water'; perGram: number }) => ({
    colourants: [{ key: 'c', title: 'Blue', percent, carrier }],
  });
  /** All that dries away counts as gone: the lye's water, what is in a vinegar, under a colour and in the lactate. */
  it('hold a fragrance against the dry soap, whatever the water came with', () => {
    const share = (over: Partial<BatterRecipe>): number => {
      const risk = risksOf({ ...over, fragrances: [scent({ percent: 5 })] }).find(
        (each) => each.code === 'fragrance.limit-unknown',
      );
      return risk?.sharePercent ?? NaN;
    };
    const plain = share({});
    expect(share(coloured(0.5, { kind: 'water', perGram: 20 }))).toBeCloseTo(share(coloured(0.5)), 9);
    expect(share({ lyeConcentrationPercent: 26 })).toBeCloseTo(plain, 9);
    expect(share({ naohPurityPercent: 90 })).toBeCloseTo(plain, 9);
    const acids = (percent: number, strengthPercent: number) =>
      share({ acids: [{ acid: 'acetic-acid', percent, strengthPercent }] });
    expect(acids(10, 5)).toBeCloseTo(acids(0.5, 100), 9);
    const potash = { kohSharePercent: 100, kohPurityPercent: 85 };
    expect(share(potash)).toBeCloseTo(share({ ...potash, kohPurityPercent: 100 }), 9);
    // 209.95 g of KOH for a kilogram of these fats (see the batch by hand), · 0.94.
    expect(share(potash)).toBeCloseTo((100 * 50) / (1000 + 197.35 + 12 + 50), 2);
    // With 1000 g of fats: 140.69 g of pure NaOH, 12 g of lactate in 20 g of solution, 50 g of fragrance.
    expect(plain).toBeCloseTo((100 * 50) / (1000 + 140.69 + 12 + 50), 2);
  });

  /** A fragrance is allowed a share of the finished soap; the driest soap holds the largest share. */
  it('find the largest dose that a supplier’s limit allows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        (percent, supplierLimitPercent) => {
          const risk = risksOf({ fragrances: [scent({ percent, supplierLimitPercent })] }).find(
            (each) => each.code === 'fragrance.over-limit',
          );
          const share = (dose: number): number => {
            const batch = batchForFats({ ...calm, fragrances: [scent({ percent: dose })] }, fats, 1000);
            if (!batch.ok) throw new Error('no batch');
            // Dry: without the lye's water, what else the flakes hold, and the 40 % of water in the lactate solution.
            const { fragrances, batchG, waterG, naohG, pureNaohG, sodiumLactateG } = batch.value;
            return (
              (100 * (fragrances[0]?.massG ?? NaN)) /
              (batchG - waterG - (naohG - pureNaohG) - 0.4 * sodiumLactateG)
            );
          };
          expect(risk === undefined).toBe(share(percent) <= supplierLimitPercent);
          if (risk === undefined) return;
          const allowed = risk.allowedPercent;
          expect(share(allowed)).toBeLessThanOrEqual(supplierLimitPercent);
          expect(share(allowed + 0.1)).toBeGreaterThan(supplierLimitPercent);
        },
      ),
      { numRuns: 50 },
    );
  });
});
