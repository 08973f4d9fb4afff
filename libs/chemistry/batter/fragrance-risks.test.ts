import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable, type Fragrance, type Risk } from '#chemistry';
import { calmRecipe as calm, risksOf } from '../../../tests/support/calm-recipe.js';
import { scent } from '../../../tests/support/scent.js';

const fats = fatTable([]);

const codesOf = (...fragrances: readonly Fragrance[]): string[] =>
  risksOf({ fragrances }).map(({ code }) => code);

describe('several fragrances', () => {
  it('are held against their limits one by one, and named', () => {
    const within = scent({ percent: 2, supplierLimitPercent: 50, title: 'Lavender' });
    const over = scent({ percent: 2, supplierLimitPercent: 1, title: 'Clove' });
    const limits = risksOf({ fragrances: [within, over] }).filter(
      ({ code }) => code === 'fragrance.over-limit',
    );
    expect(limits).toMatchObject([{ fragrance: 'Clove', limitPercent: 1 }]);
  });

  it('take a limit for another product for none', () => {
    const leftOn = scent({ percent: 2, supplierLimitPercent: 1, limitCategory: '5A', title: 'Rose' });
    expect(risksOf({ fragrances: [leftOn] })).toMatchObject([
      { code: 'fragrance.limit-not-for-soap', fragrance: 'Rose', category: '5A' },
    ]);
    expect(codesOf({ ...leftOn, limitCategory: '9' })).toEqual(['fragrance.over-limit']);
  });

  /** Essential oils are strong: makers keep them to 3 % of the fats, and fragrance oils to 3 to 6 %. Common practice, no source. */
  it.each([
    ['essential-oil', 3],
    ['fragrance-oil', 6],
    [undefined, 6],
  ] as const)('weigh more where there is no limit for an unusual dose: %s above %d %%', (kind, usual) => {
    const level = (percent: number): unknown =>
      risksOf({ fragrances: [scent({ percent, kind })] }).find(
        ({ code }) => code === 'fragrance.limit-unknown',
      )?.level;
    expect([level(usual), level(usual + 0.1)]).toEqual(['medium', 'high']);
  });

  it('may not use up more than their limits together, and say how much of each does not', () => {
    const limited = fc.record({
      percent: fc.double({ min: 0.5, max: 3, noNaN: true }),
      limit: fc.double({ min: 1, max: 8, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(limited, { minLength: 2, maxLength: 3 }), (list) => {
        /** Σ share / limit, in closed form, with every dose times k. */
        const used = (k: number): number => {
          const fragrances = list.map(({ percent }) => scent({ percent: percent * k }));
          const batch = batchForFats({ ...calm, fragrances }, fats, 1000);
          if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
          const { batchG, waterG, naohG, pureNaohG, sodiumLactateG } = batch.value;
          const dry = batchG - waterG - (naohG - pureNaohG) - 0.4 * sodiumLactateG;
          return list.reduce((sum, { limit }, i) => {
            return sum + ((batch.value.fragrances[i]?.massG ?? NaN) * 100) / dry / limit;
          }, 0);
        };
        const fragrances = list.map(({ percent, limit }) => scent({ percent, supplierLimitPercent: limit }));
        const risks: readonly Risk[] = risksOf({ fragrances });
        const together = risks.find((risk) => risk.code === 'fragrance.over-together');
        const alone = risks.some(({ code }) => code === 'fragrance.over-limit');
        expect(together !== undefined).toBe(!alone && used(1) > 1);
        if (together === undefined) return;
        expect(together.usedPercent).toBeCloseTo(100 * used(1), 6);
        expect(used(together.allowedPercent / 100)).toBeLessThanOrEqual(1);
        expect(used((together.allowedPercent + 1) / 100)).toBeGreaterThan(1);
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  it('brown by the vanillin of all of them', () => {
    // 1 % of 4 % and 2 % of 3 % are 0.1 % of the fats.
    const fragrances = [
      scent({ percent: 1, vanillinPercent: 4, supplierLimitPercent: 50 }),
      scent({ percent: 2, vanillinPercent: 3, supplierLimitPercent: 50 }),
    ];
    expect(risksOf({ fragrances })).toEqual([
      expect.objectContaining({ code: 'fragrance.browns', vanillinPercent: 0.1, shade: 'tan' }),
    ]);
  });

  it.each([
    ['ricing', ['fragrance.rices']],
    ['unknown', ['fragrance.untried']],
    ['slowing', []],
    ['strong', []],
  ] as const)('say of one that is %s what may happen', (behaviour, codes) => {
    expect(codesOf(scent({ percent: 2, supplierLimitPercent: 50, behaviour }))).toEqual(codes);
  });

  it('count together for how much there is', () => {
    const half = scent({ percent: 3.1, supplierLimitPercent: 50 });
    expect(codesOf(half)).toEqual([]);
    expect(codesOf(half, half)).toEqual(['fragrance.much']);
  });
});
