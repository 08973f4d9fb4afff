import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable, recipeRisks, type BatterRecipe } from '#chemistry';
import { anyRecipe } from '../../../tests/support/any-recipe.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

const calm: BatterRecipe = {
  fats: [
    { fat: 'olive', percent: 70 },
    { fat: 'coconut', percent: 30 },
  ],
  lyeConcentrationPercent: 33,
  superfatPercent: 6,
  naohPurityPercent: 99,
  sodiumLactatePercent: 2,
  saltPercent: 0,
  sugarPercent: 0,
  batterTemperatureC: 38,
};

function risksOf(over: Partial<BatterRecipe>, fatsG = 1000) {
  const recipe = { ...calm, ...over };
  const batch = batchForFats(recipe, fats, fatsG);
  if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
  return recipeRisks(recipe, batch.value, fats);
}

const codesOf = (over: Partial<BatterRecipe>, fatsG?: number): string[] =>
  risksOf(over, fatsG).map(({ code }) => code);

describe('risks of a recipe', () => {
  it('are none for a usual one', () => {
    expect(risksOf({})).toEqual([]);
  });

  it.each([
    ['lye.strong', { lyeConcentrationPercent: 45 }],
    ['lye.wet', { lyeConcentrationPercent: 22 }],
    [
      'lye.wet',
      { colourants: [{ key: 'w', title: 'White', percent: 3, carrier: { kind: 'water', perGram: 6 } }] },
    ],
    ['acid.takes-much', { acids: [{ acid: 'acetic-acid', percent: 28, strengthPercent: 100 }] }],
    [
      'batter.too-cool',
      {
        fats: [
          { fat: 'stearic-acid', percent: 40 },
          { fat: 'olive', percent: 60 },
        ],
      },
    ],
    [
      'batter.too-cool',
      {
        fats: [
          { fat: 'beeswax', percent: 5 },
          { fat: 'olive', percent: 95 },
        ],
      },
    ],
    ['fragrance.seizes', { fragrance: { percent: 3, supplierLimitPercent: 9, behaviour: 'seizing' } }],
    ['lye.little-superfat', { superfatPercent: 1 }],
    ['lye.much-superfat', { superfatPercent: 12 }],
    ['lye.excess', { superfatPercent: -3, lyeExcessIntended: true }],
    ['lye.lean-lot', { superfatPercent: 2 }],
    ['sodium-lactate.much', { sodiumLactatePercent: 4 }],
    ['salt.much', { saltPercent: 5 }],
    ['salt.bar', { saltPercent: 50 }],
    ['sugar.heats', { sugarPercent: 3 }],
    ['sugar.heats', { sugarPercent: 1, batterTemperatureC: 55 }],
    ['fragrance.limit-unknown', { fragrance: { percent: 3 } }],
    ['fragrance.much', { fragrance: { percent: 7, supplierLimitPercent: 50 } }],
    ['fragrance.browns', { fragrance: { percent: 3, supplierLimitPercent: 9, vanillinPercent: 2 } }],
    ['colourant.much', { colourants: [{ key: 'c', title: 'Blue', percent: 4 }] }],
    [
      'colourant.oil',
      { colourants: [{ key: 'c', title: 'Blue', percent: 1, carrier: { kind: 'fat', perGram: 3 } }] },
    ],
    ['addition.spoils', { additions: [{ key: 'a', title: 'Carrot', percent: 5, kind: 'fresh-food' }] }],
    ['addition.browns', { additions: [{ key: 'a', title: 'Petals', percent: 1, kind: 'dried-plant' }] }],
  ] satisfies [string, Partial<BatterRecipe>][])('name %s', (code, over) => {
    expect(codesOf(over)).toContain(code);
  });

  it('go with the figures behind them', () => {
    expect(risksOf({ superfatPercent: -3, lyeExcessIntended: true })).toContainEqual({
      ...{ code: 'lye.excess', level: 'high', percent: 3 },
    });
    const lean = risksOf({ superfatPercent: 2 }).find((risk) => risk.code === 'lye.lean-lot');
    // With so much more superfat the leanest lot keeps no lye.
    expect(lean?.leftOverPercent).toBeGreaterThan(0);
    expect(codesOf({ superfatPercent: lean?.enoughPercent ?? NaN })).not.toContain('lye.lean-lot');
    const small = risksOf({}, 90).find((risk) => risk.code === 'batch.small');
    expect(small).toMatchObject({ level: 'high', scalesG: 0.01 });
  });

  it('leave a high superfat to soap that is nearly all coconut', () => {
    const fatsOf = [{ fat: 'coconut', percent: 100 }];
    expect(codesOf({ superfatPercent: 20, fats: fatsOf })).not.toContain('lye.much-superfat');
  });

  it('leave stearic acid in a hot batter, and liquid jojoba, alone', () => {
    const stearic = [
      { fat: 'stearic-acid', percent: 40 },
      { fat: 'olive', percent: 60 },
    ];
    expect(codesOf({ fats: stearic, batterTemperatureC: 65 })).not.toContain('batter.too-cool');
    const jojoba = [
      { fat: 'jojoba', percent: 5 },
      { fat: 'olive', percent: 95 },
    ];
    expect(codesOf({ fats: jojoba })).not.toContain('batter.too-cool');
  });

  it('ask for a finer scale only for small batches', () => {
    expect(codesOf({}, 299)).toContain('batch.small');
    expect(codesOf({}, 300)).not.toContain('batch.small');
  });

  /** A fragrance is allowed a share of the finished soap; the driest soap holds the largest share. */
  it('find the largest dose that a supplier’s limit allows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        (percent, supplierLimitPercent) => {
          const risk = risksOf({ fragrance: { percent, supplierLimitPercent } }).find(
            (each) => each.code === 'fragrance.over-limit',
          );
          const share = (dose: number): number => {
            const batch = batchForFats({ ...calm, fragrance: { percent: dose } }, fats, 1000);
            if (!batch.ok) throw new Error('no batch');
            // Dry: without the lye's water, what else the flakes hold, and the 40 % of water in the lactate solution.
            const { fragranceG, batchG, waterG, naohG, pureNaohG, sodiumLactateG } = batch.value;
            return (100 * fragranceG) / (batchG - waterG - (naohG - pureNaohG) - 0.4 * sodiumLactateG);
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

  /** Common practice, no source: at a load of 5 %, 1 % of vanillin tans and 5 % is chocolate. */
  it.each([
    [5, 0.5, 'cream'],
    [5, 1, 'tan'],
    [2.5, 2, 'tan'],
    [5, 5, 'brown'],
  ])('forecast the browning of %d %% of a fragrance with %d %% vanillin: %s', (percent, vanillin, shade) => {
    const fragrance = { percent, vanillinPercent: vanillin, supplierLimitPercent: 50 };
    const browning = risksOf({ fragrance }).find((risk) => risk.code === 'fragrance.browns');
    expect(browning?.shade).toBe(shade);
  });

  it('say that a lean lot keeps lye exactly when the superfat of such lots is below 0', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const batch = batchForFats(recipe, fats, 1000);
        if (!batch.ok) throw new Error('no batch');
        const told = recipeRisks(recipe, batch.value, fats).some(({ code }) => code === 'lye.lean-lot');
        expect(told).toBe(batch.value.superfat.low < 0);
      }),
    );
  });

  /** 1 − (1 − s) · SV(used)/SV(low) for coconut, Codex CXS 210: 248, 256.5, 265 mg KOH/g, at 5 % superfat. */
  it('show the superfat of lots at both ends of a standard', () => {
    const batch = batchForFats(
      { ...calm, superfatPercent: 5, fats: [{ fat: 'coconut', percent: 100 }] },
      fats,
      1000,
    );
    if (!batch.ok) throw new Error('no batch');
    expect(batch.value.superfat.low).toBeCloseTo(100 * (1 - (0.95 * 256.5) / 248), 9);
    expect(batch.value.superfat.high).toBeCloseTo(100 * (1 - (0.95 * 256.5) / 265), 9);
  });
});
