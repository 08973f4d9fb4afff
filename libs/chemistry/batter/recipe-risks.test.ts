import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  batchForFats,
  batterOf,
  fatTable,
  recipeRisks,
  type BatterRecipe,
  type FatFacts,
  type Fragrance,
} from '#chemistry';
import { anyRecipe } from '../../../tests/support/any-recipe.js';
import { calmRecipe as calm, risksOf } from '../../../tests/support/calm-recipe.js';
import { scent } from '../../../tests/support/scent.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

/** As it would be rounded. */
const near = (value: number, digits = 2): unknown => expect.closeTo(value, digits);

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
    [
      'fragrance.seizes',
      { fragrances: [scent({ percent: 3, supplierLimitPercent: 9, behaviour: 'seizing' })] },
    ],
    ['lye.little-superfat', { superfatPercent: 1 }],
    ['lye.much-superfat', { superfatPercent: 12 }],
    ['lye.excess', { superfatPercent: -3, lyeExcessIntended: true }],
    ['lye.lean-lot', { superfatPercent: 2 }],
    ['sodium-lactate.much', { sodiumLactatePercent: 4 }],
    ['salt.much', { saltPercent: 5 }],
    ['salt.bar', { saltPercent: 50 }],
    ['sugar.heats', { sugarPercent: 3 }],
    ['sugar.heats', { sugarPercent: 1, batterTemperatureC: 55 }],
    ['fragrance.limit-unknown', { fragrances: [scent({ percent: 3 })] }],
    ['fragrance.much', { fragrances: [scent({ percent: 7, supplierLimitPercent: 50 })] }],
    [
      'fragrance.browns',
      { fragrances: [scent({ percent: 3, supplierLimitPercent: 9, vanillinPercent: 2 })] },
    ],
    ['colourant.much', { colourants: [{ key: 'c', title: 'Blue', percent: 4 }] }],
    [
      'colourant.oil',
      { colourants: [{ key: 'c', title: 'Blue', percent: 1, carrier: { kind: 'fat', perGram: 3 } }] },
    ],
    ['addition.spoils', { additions: [{ key: 'a', title: 'Carrot', percent: 5, kind: 'fresh-food' }] }],
    ['addition.browns', { additions: [{ key: 'a', title: 'Petals', percent: 1, kind: 'dried-plant' }] }],
    [
      'addition.scorches',
      { additions: [{ key: 'a', title: 'Milk', percent: 2, kind: 'powdered-milk' }], batterTemperatureC: 41 },
    ],
    ['sugar.heats', { additions: [{ key: 'a', title: 'Milk', percent: 20, kind: 'powdered-milk' }] }],
    [
      'fats.advised-against',
      {
        fats: [
          { fat: 'neem', percent: 2 },
          { fat: 'olive', percent: 98 },
        ],
      },
    ],
  ] satisfies [string, Partial<BatterRecipe>][])('name %s', (code, over) => {
    expect(codesOf(over)).toContain(code);
  });

  const coloured = (percent: number, carrier?: { kind: 'fat' | 'water'; perGram: number }) => ({
    colourants: [{ key: 'c', title: 'Blue', percent, carrier }],
  });
  const scented = (percent: number, more: Partial<Fragrance> = {}) => ({
    fragrances: [scent({ percent, supplierLimitPercent: 50, ...more })],
  });
  const blend = (fat: string, percent: number) => ({
    fats: [
      { fat, percent },
      { fat: 'olive', percent: 100 - percent },
    ],
  });

  /** Common practice, no source: each code with the last recipe that is left alone and the first that is not. */
  it.each([
    ['lye.strong', { lyeConcentrationPercent: 40 }, { lyeConcentrationPercent: 40.1 }],
    ['lye.wet', { lyeConcentrationPercent: 25 }, { lyeConcentrationPercent: 24.9 }],
    ['lye.little-superfat', { superfatPercent: 2 }, { superfatPercent: 1.9 }],
    ['lye.much-superfat', { superfatPercent: 8 }, { superfatPercent: 8.1 }],
    [
      'lye.much-superfat',
      { superfatPercent: 12, ...blend('coconut', 80) },
      { superfatPercent: 12, ...blend('coconut', 79) },
    ],
    [
      'lye.much-superfat',
      { superfatPercent: 12, ...blend('coconut', 90) },
      { superfatPercent: 12, ...blend('palm', 90) },
    ],
    ['lye.excess', { superfatPercent: 0 }, { superfatPercent: -0.1, lyeExcessIntended: true }],
    ['batter.too-cool', blend('beeswax', 2.9), blend('beeswax', 3)],
    [
      'batter.too-cool',
      { ...blend('beeswax', 5), batterTemperatureC: 60 },
      { ...blend('beeswax', 5), batterTemperatureC: 59 },
    ],
    ['sodium-lactate.much', { sodiumLactatePercent: 3 }, { sodiumLactatePercent: 3.1 }],
    ['salt.much', { saltPercent: 1 }, { saltPercent: 1.1 }],
    ['salt.much', { saltPercent: 25 }, { saltPercent: 24.9 }],
    ['salt.bar', { saltPercent: 24.9 }, { saltPercent: 25 }],
    ['sugar.heats', { sugarPercent: 2 }, { sugarPercent: 2.1 }],
    ['sugar.heats', { sugarPercent: 1, batterTemperatureC: 45 }, { sugarPercent: 1, batterTemperatureC: 46 }],
    ['sugar.heats', { batterTemperatureC: 60 }, { sugarPercent: 0.1, batterTemperatureC: 60 }],
    ['fragrance.much', scented(6), scented(6.1)],
    [
      'fragrance.limit-unknown',
      { fragrances: [scent({ percent: 0 })] },
      { fragrances: [scent({ percent: 0.1 })] },
    ],
    ['fragrance.browns', scented(3, { vanillinPercent: 0 }), scented(3, { vanillinPercent: 0.1 })],
    ['fragrance.seizes', scented(3, { behaviour: 'strong' }), scented(3, { behaviour: 'seizing' })],
    ['colourant.much', coloured(3), coloured(3.1)],
    ['colourant.oil', coloured(1, { kind: 'fat', perGram: 1 }), coloured(1, { kind: 'fat', perGram: 1.1 })],
    ['colourant.oil', coloured(2, { kind: 'water', perGram: 5 }), coloured(2, { kind: 'fat', perGram: 5 })],
    [
      'acid.takes-much',
      { acids: [{ acid: 'citric-acid', percent: 2 }] },
      { acids: [{ acid: 'citric-acid', percent: 3 }] },
    ],
  ] satisfies [string, Partial<BatterRecipe>, Partial<BatterRecipe>][])(
    'name %s for no less than its threshold',
    (code, last, first) => {
      expect(codesOf(last)).not.toContain(code);
      expect(codesOf(first)).toContain(code);
    },
  );

  /** 1.5 g of water for 1 g of pure NaOH is a lye of 40 %. */
  it('call lye of 25 % never wet and lye of 40 % never strong, however a division rounds', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const plain = { ...recipe, naohPurityPercent: 100, kohSharePercent: 0, acids: [], colourants: [] };
        const { lyeConcentrationPercent: _, ...dry } = plain;
        for (const each of [
          { ...plain, lyeConcentrationPercent: 25 },
          batterOf({ ...dry, waterPerLye: 1.5 }, fats),
          batterOf({ ...dry, waterPerLye: 3 }, fats),
        ]) {
          const batch = batchForFats(each, fats, 1000);
          if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
          const codes = recipeRisks(each, batch.value, fats).map(({ code }) => code);
          expect(codes.filter((code) => code === 'lye.wet' || code === 'lye.strong')).toEqual([]);
        }
      }),
    );
  });

  it('find nothing in a fragrance that is within its limit', () => {
    expect(risksOf(scented(3))).toEqual([]);
  });

  /** A lot that takes just what the lye brings keeps none of it. */
  it('do not call a lot lean that uses up all of its lye', () => {
    const coconut = fats.get('coconut');
    if (coconut === undefined) throw new Error('no coconut');
    const exact: FatFacts = {
      ...{ ...coconut, key: 'exact' },
      saponificationMgKohPerG: { low: 250, used: 250, high: 250 },
    };
    const table = fatTable([exact]);
    const recipe = { ...calm, superfatPercent: 0, fats: [{ fat: 'exact', percent: 100 }] };
    const batch = batchForFats(recipe, table, 1000);
    if (!batch.ok) throw new Error('no batch');
    expect(recipeRisks(recipe, batch.value, table).map(({ code }) => code)).toEqual(['lye.little-superfat']);
  });

  it('do not tell a maker of salt soap both that it is a lot and that it is a bar', () => {
    expect(codesOf({ saltPercent: 50 })).not.toContain('salt.much');
  });

  /** Half of skimmed milk powder is lactose (from memory): 9 % with 20 % of it, and 0.9 % with 2 %. */
  it('count the sugar in milk powder, and call it scorched only in warm batter', () => {
    const milk = (percent: number, more: Partial<BatterRecipe> = {}) =>
      risksOf({ additions: [{ key: 'a', title: 'Milk', percent, kind: 'powdered-milk' }], ...more });
    expect(milk(20)).toEqual([{ code: 'sugar.heats', level: 'medium', percent: 9, belowC: 40 }]);
    expect(milk(2, { batterTemperatureC: 40 })).toEqual([]);
    expect(milk(2, { batterTemperatureC: 41 })).toEqual([
      { code: 'addition.scorches', level: 'medium', addition: 'Milk', belowC: 40 },
    ]);
  });

  it('leave additions alone that neither spoil nor go brown', () => {
    const additions = [{ key: 'a', title: 'Kaolin', percent: 3, kind: 'clay' }] as const;
    expect(risksOf({ additions })).toEqual([]);
  });

  /**
   * Coconut at 256.5 and olive at 190 mg KOH/g, the middles of their standards, with 6 % superfat and flakes of 99 %:
   * 299 · 0.190 · 0.7 + 299 · 0.2565 · 0.3 = 62.775 g of KOH, · 0.94 · 0.712888 / 0.99 = 42.491 g of flakes.
   */
  it('say what a gram on the scales is of all the lye, and how fine they must show', () => {
    expect(risksOf({}, 299)).toContainEqual({
      ...{ code: 'batch.small', level: 'medium', gramPercent: near(100 / 42.491), scalesG: 0.1 },
    });
    expect(risksOf({}, 100)).toMatchObject([{ level: 'medium', scalesG: 0.1 }]);
    expect(risksOf({}, 99)).toMatchObject([{ level: 'high', scalesG: 0.01 }]);
    const potash = risksOf({ kohSharePercent: 50, kohPurityPercent: 90 }, 299);
    // Half of the moles as KOH: 42.491 / 2 g of NaOH flakes and 62.775 · 0.94 / 2 / 0.9 g of KOH.
    expect(potash).toMatchObject([{ gramPercent: near(100 / (21.2455 + 32.783)) }]);
  });

  it('name the fats that set, and how warm they need the batter', () => {
    const fatsOf = [
      { fat: 'stearic-acid', percent: 10 },
      { fat: 'beeswax', percent: 5 },
      { fat: 'jojoba', percent: 5 },
      { fat: 'olive', percent: 80 },
    ];
    const risk = risksOf({ fats: fatsOf }).find(({ code }) => code === 'batter.too-cool');
    expect(risk).toMatchObject({ level: 'high', batterTemperatureC: 38, enoughC: 60 });
    expect(risk?.code === 'batter.too-cool' && risk.fats.map(({ fat }) => fat)).toEqual([
      'stearic-acid',
      'beeswax',
    ]);
  });

  /**
   * 28 % of acetic acid takes 28 / 60.052 = 0.46626 mol on 100 g of fats. Olive and coconut at 6 % superfat take
   * 100 · (0.7 · 190 + 0.3 · 256.5) / 1000 / 56.105 · 0.94 = 0.35176 mol: 57.0 % of all of it.
   */
  it('say which part of the lye an acid takes', () => {
    const acids = [{ acid: 'acetic-acid', percent: 28, strengthPercent: 100 }] as const;
    const shares = [0, 60].map((kohSharePercent) =>
      risksOf({ acids, kohSharePercent, kohPurityPercent: 90 }).find(
        ({ code }) => code === 'acid.takes-much',
      ),
    );
    for (const risk of shares) expect(risk).toMatchObject({ percent: near(57, 1) });
  });

  /** 2 % of a colour in 3 g of oil each is 6 g of oil on 100 g of fats: (6 + 6) / 106. */
  it('say how high a superfat the oil under the colours comes to', () => {
    expect(risksOf(coloured(2, { kind: 'fat', perGram: 3 }))).toContainEqual({
      ...{ code: 'colourant.oil', level: 'medium', superfatPercent: near(11.3208) },
    });
  });

  it('say how brown a soap becomes by the vanillin on its fats', () => {
    expect(risksOf(scented(5, { vanillinPercent: 2 }))).toContainEqual({
      ...{ code: 'fragrance.browns', level: 'medium', vanillinPercent: near(0.1), shade: 'tan' },
    });
  });

  it('ask for no more superfat than the leanest lot needs', () => {
    const lean = risksOf({ superfatPercent: 1 }).find((risk) => risk.code === 'lye.lean-lot');
    const enough = lean?.enoughPercent ?? NaN;
    expect(codesOf({ superfatPercent: enough })).not.toContain('lye.lean-lot');
    expect(codesOf({ superfatPercent: enough - 1 })).toContain('lye.lean-lot');
    const batch = batchForFats({ ...calm, superfatPercent: 1 }, fats, 1000);
    expect(lean?.leftOverPercent).toBeCloseTo(batch.ok ? -batch.value.superfat.low : NaN, 9);
  });

  it('call lye that is left over on purpose that, and not a lean lot', () => {
    expect(codesOf({ superfatPercent: -3, lyeExcessIntended: true })).toEqual(['lye.excess']);
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

  /** Common practice, no source: at a load of 5 %, 1 % of vanillin tans and 5 % is chocolate. */
  it.each([
    [5, 0.5, 'cream'],
    [5, 1, 'tan'],
    [2.5, 2, 'tan'],
    [5, 5, 'brown'],
  ])('forecast the browning of %d %% of a fragrance with %d %% vanillin: %s', (percent, vanillin, shade) => {
    const fragrance = { percent, vanillinPercent: vanillin, supplierLimitPercent: 50 };
    const browning = risksOf({ fragrances: [scent(fragrance)] }).find(
      (risk) => risk.code === 'fragrance.browns',
    );
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
