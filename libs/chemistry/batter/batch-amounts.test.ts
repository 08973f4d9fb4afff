import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from '#units';
import { batchForFats, batchForVolume, fatTable, lyeDensity, type BatchAmounts } from '#chemistry';
import { anyRecipe, weighedTogether } from '../../../tests/support/any-recipe.js';
import { plainRecipe as plain } from '../../../tests/support/plain-recipe.js';
import { scent } from '../../../tests/support/scent.js';

fc.configureGlobal({ seed: 1 });

const fats = fatTable([]);

const anyMass = fc.double({ min: 1, max: 50_000, noNaN: true });

function made(result: Result<BatchAmounts>): BatchAmounts {
  if (!result.ok) throw new Error(result.issues.map(({ code }) => code).join(' '));
  return result.value;
}

describe('a batch by hand', () => {
  /**
   * 300 g coconut at 256.5 and 700 g olive at 190 mg KOH/g (middles of Codex CXS 210 and CXS 33) take
   * 76.95 + 133.00 = 209.95 g KOH, so 209.95 · 0.712888 · 0.95 = 142.187 g NaOH in 430.870 g of 33 % lye.
   */
  it('takes the lye that arithmetic gives', () => {
    const batch = made(batchForFats(plain, fats, 1000));
    expect(batch.fats.map(({ massG }) => massG)).toEqual([300, 700]);
    expect(batch.naohG).toBeCloseTo(142.187, 2);
    expect(batch.waterG).toBeCloseTo(430.87 - 142.187, 2);
    expect(batch.batchG).toBeCloseTo(1430.87, 2);
  });

  /** 142.187 / 0.97 = 146.585 g of flakes; the lye still weighs 430.870 g, so the water gives way. */
  it('weighs more of impure flakes and no more lye', () => {
    const batch = made(batchForFats({ ...plain, naohPurityPercent: 97 }, fats, 1000));
    expect(batch.naohG).toBeCloseTo(146.585, 2);
    expect(batch.waterG).toBeCloseTo(284.285, 2);
  });

  /** 2 % of 1000 g each of lactate solution and fragrance, 1 % of salt, 0.5 % of sugar. */
  it('takes additives as shares of the fats', () => {
    const recipe = {
      ...plain,
      sodiumLactatePercent: 2,
      saltPercent: 1,
      sugarPercent: 0.5,
      fragrances: [scent({ percent: 2 })],
    };
    const batch = made(batchForFats(recipe, fats, 1000));
    expect([batch.sodiumLactateG, batch.saltG, batch.sugarG]).toEqual([20, 10, 5]);
    expect(batch.fragrances).toEqual([{ key: 'sea', title: 'Sea air', massG: 20, hasAllergens: false }]);
    expect(batch.batchG).toBeCloseTo(1485.87, 2);
  });
});

describe('what is weighed beside fats and lye', () => {
  const blue = { key: 'blue', title: 'Blue', percent: 2 };

  /** Of 1000 g of fats: 2 % of a colour is 20 g, in 3 g of oil each 60 g. */
  it('takes the carrier of a colour by the weight of the colour', () => {
    const carrier = { kind: 'fat', perGram: 3, fat: 'sunflower' } as const;
    const { colourants } = made(batchForFats({ ...plain, colourants: [{ ...blue, carrier }] }, fats, 1000));
    expect(colourants).toEqual([{ ...blueOf(20), carrier: { kind: 'fat', fat: 'sunflower', massG: 60 } }]);
  });

  it('names no carrier for a dry colour, and no fat for one in water', () => {
    const carrier = { kind: 'water', perGram: 2 } as const;
    const recipe = { ...plain, colourants: [blue, { ...blue, carrier }] };
    expect(made(batchForFats(recipe, fats, 1000)).colourants).toStrictEqual([
      blueOf(20),
      { ...blueOf(20), carrier: { kind: 'water', massG: 40 } },
    ]);
  });

  it('names acids with their strength, and additions, each with its weight', () => {
    const acids = [{ acid: 'lactic-acid', percent: 2, strengthPercent: 80 }] as const;
    const additions = [{ key: 'oats', title: 'Oats', percent: 3, kind: 'scrub' }] as const;
    const batch = made(batchForFats({ ...plain, acids, additions }, fats, 1000));
    expect(batch.acids).toEqual([{ key: 'lactic-acid', title: 'Lactic acid, 80 %', massG: 20 }]);
    expect(batch.additions).toEqual([{ key: 'oats', title: 'Oats', massG: 30 }]);
  });

  it('takes room: as much more as its mass over its density', () => {
    const dry = made(batchForFats(plain, fats, 1000));
    const additions = [{ key: 'clay', title: 'Clay', percent: 26, kind: 'clay' }] as const;
    // 260 g of kaolin at 2.6 g/mL.
    expect(made(batchForFats({ ...plain, additions }, fats, 1000)).batchMl - dry.batchMl).toBeCloseTo(100, 9);
    // 100 g of a vinegar: 5 g of acid at 1.049 g/mL, 95 g of water at 0.998, and what lye the acid takes besides.
    const acids = [{ acid: 'acetic-acid', percent: 10, strengthPercent: 5 }] as const;
    const sour = made(batchForFats({ ...plain, acids }, fats, 1000));
    const lyeMl = (sour.lyeG - dry.lyeG) * (1 / lyeDensity(33, plain.batterTemperatureC));
    expect(sour.batchMl - dry.batchMl - lyeMl).toBeCloseTo(5 / 1.049 + 95 / 0.998, 6);
  });

  function blueOf(massG: number) {
    return { key: 'blue', title: 'Blue', massG };
  }
});

describe('every batch', () => {
  it('weighs what went into it', () => {
    fc.assert(
      fc.property(anyRecipe, anyMass, (recipe, fatsG) => {
        const b = made(batchForFats(recipe, fats, fatsG));
        expect(Math.abs(weighedTogether(b) - b.batchG) / b.batchG).toBeLessThan(1e-9);
        expect(Math.abs(b.densityGPerMl * b.batchMl - b.batchG) / b.batchG).toBeLessThan(1e-9);
        expect(Math.min(b.naohG + b.kohG, b.waterG)).toBeGreaterThan(0);
      }),
    );
  });

  it('has the lye concentration asked for', () => {
    fc.assert(
      fc.property(anyRecipe, anyMass, (recipe, fatsG) => {
        const { naohG, kohG, waterG } = made(batchForFats(recipe, fats, fatsG));
        const pureG = (naohG * recipe.naohPurityPercent + kohG * (recipe.kohPurityPercent ?? 100)) / 100;
        expect((100 * pureG) / (naohG + kohG + waterG)).toBeCloseTo(recipe.lyeConcentrationPercent, 9);
      }),
    );
  });

  it('grows in proportion to its fats', () => {
    fc.assert(
      fc.property(
        anyRecipe,
        anyMass,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (recipe, fatsG, times) => {
          const one = made(batchForFats(recipe, fats, fatsG));
          const many = made(batchForFats(recipe, fats, fatsG * times));
          for (const field of ['naohG', 'kohG', 'waterG', 'batchG', 'batchMl'] as const) {
            if (one[field] === 0) expect(many[field]).toBe(0);
            else expect(many[field] / (one[field] * times)).toBeCloseTo(1, 9);
          }
          expect(many.densityGPerMl).toBeCloseTo(one.densityGPerMl, 9);
        },
      ),
    );
  });

  it('fills the volume it was made for', () => {
    fc.assert(
      fc.property(anyRecipe, anyMass, (recipe, fatsG) => {
        const batch = made(batchForFats(recipe, fats, fatsG));
        const again = made(batchForVolume(recipe, fats, batch.batchMl));
        expect(again.fatsG / fatsG).toBeCloseTo(1, 9);
        expect(again.batchMl / batch.batchMl).toBeCloseTo(1, 9);
      }),
    );
  });

  it('takes less lye with more superfat, more of less pure flakes, and less water at a higher strength', () => {
    const change = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyRecipe, change, (recipe, by) => {
        const base = {
          ...recipe,
          superfatPercent: recipe.superfatPercent * 0.9,
          naohPurityPercent: Math.min(recipe.naohPurityPercent, 98.9),
          kohSharePercent: Math.min(recipe.kohSharePercent ?? 0, 99),
          lyeConcentrationPercent: Math.min(recipe.lyeConcentrationPercent, 48.9),
        };
        const one = made(batchForFats(base, fats, 1000));
        const fatter = made(
          batchForFats({ ...base, superfatPercent: base.superfatPercent + by }, fats, 1000),
        );
        const purer = made(
          batchForFats({ ...base, naohPurityPercent: base.naohPurityPercent + by }, fats, 1000),
        );
        const stronger = made(
          batchForFats({ ...base, lyeConcentrationPercent: base.lyeConcentrationPercent + by }, fats, 1000),
        );
        expect(fatter.naohG).toBeLessThan(one.naohG);
        expect(fatter.lyeG).toBeLessThan(one.lyeG);
        expect(purer.naohG).toBeLessThan(one.naohG);
        expect(stronger.waterG).toBeLessThan(one.waterG);
        expect(stronger.naohG).toBeCloseTo(one.naohG, 9);
        expect(stronger.batchMl).toBeLessThan(one.batchMl);
      }),
    );
  });
});

describe('sizes that cannot be made', () => {
  it('begin just beyond a tonne, which it says', () => {
    expect(batchForFats(plain, fats, 1_000_000).ok).toBe(true);
    expect(batchForVolume(plain, fats, 1_000_000).ok).toBe(true);
    const accepted = { kind: 'range', low: 0, high: 1_000_000, isOpen: true };
    expect(batchForFats(plain, fats, 0)).toMatchObject({
      issues: [{ accepted: { ...accepted, unit: 'g' } }],
    });
    expect(batchForVolume(plain, fats, 0)).toMatchObject({
      issues: [{ accepted: { ...accepted, unit: 'mL' } }],
    });
  });

  it.each([0, -5, NaN, Infinity, 1_000_001])('refuses %d', (size) => {
    for (const [result, code, field] of [
      [batchForFats(plain, fats, size), 'batch.fats-out-of-range', 'fatsG'],
      [batchForVolume(plain, fats, size), 'batch.volume-out-of-range', 'volumeMl'],
    ] as const) {
      expect(result.ok).toBe(false);
      if (result.ok) continue;
      expect(result.issues).toHaveLength(1);
      expect(result.issues[0]).toMatchObject({ code, path: [field], value: size, found: size });
    }
  });

  it('reports the recipe’s own troubles beside the size', () => {
    const result = batchForVolume({ ...plain, superfatPercent: -1 }, fats, 0);
    expect(result.ok ? [] : result.issues.map(({ code }) => code)).toEqual([
      'lye.superfat-out-of-range',
      'batch.volume-out-of-range',
    ]);
  });
});

it('works amounts out at every temperature that is accepted, with a density that hardly moves', () => {
  const densities = [15, 20, 80, 85, 90].map((batterTemperatureC) => {
    const batch = batchForFats({ ...plain, batterTemperatureC }, fats, 1000);
    if (!batch.ok) throw new Error(JSON.stringify(batch.issues));
    return batch.value.densityGPerMl;
  });
  expect(densities).toEqual([...densities].sort((a, b) => b - a));
  expect((densities[0] ?? NaN) / (densities[1] ?? NaN)).toBeLessThan(1.005);
  expect((densities[2] ?? NaN) / (densities[4] ?? NaN)).toBeLessThan(1.01);
});
