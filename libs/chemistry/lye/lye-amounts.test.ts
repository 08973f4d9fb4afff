import { describe, expect, it } from 'vitest';
import { fatTable, lyeForFats, superfatRange, type FatFacts } from '#chemistry';
import { plainRecipe } from '../../../tests/support/plain-recipe.js';

const recipe = {
  ...plainRecipe,
  fats: [{ fat: 'coconut', percent: 100 }],
  lyeConcentrationPercent: 30,
  superfatPercent: 20,
  naohPurityPercent: 96,
};

describe('lyeForFats', () => {
  /** 500 g · 0.2565 · 0.712888 · 0.8 = 73.142 g pure; / 0.96 = 76.190 g weighed; / 0.30 = 243.807 g of lye. */
  it('shows the pure amount beside the weighed one, and the whole', () => {
    const lye = lyeForFats(recipe, fatTable([]), 500);
    expect(lye.pureNaohG).toBeCloseTo(73.142, 2);
    expect(lye.naohG).toBeCloseTo(76.19, 2);
    expect(lye.lyeG).toBeCloseTo(243.807, 2);
    expect(lye.naohG + lye.waterG).toBeCloseTo(lye.lyeG, 9);
  });

  /**
   * 2 % of citric acid, anhydrous, is 10 g: 10/192.124 · 3 protons · 39.997 = 6.2455 g of NaOH on top of the 73.142 g,
   * though a fifth of the lye for the fats is left out.
   */
  it('gives an acid all of its alkali, whatever the superfat', () => {
    const acids = [{ acid: 'citric-acid', percent: 2 }] as const;
    expect(lyeForFats({ ...recipe, acids }, fatTable([]), 500).pureNaohG).toBeCloseTo(73.142 + 6.2455, 2);
  });

  /** All of the 500 · 0.2565 · 0.8 = 102.6 g of KOH, of 90 %: 114 g weighed, and 342 g of lye of 30 %. */
  it('divides the other alkali by its own purity', () => {
    const potash = { ...recipe, kohSharePercent: 100, kohPurityPercent: 90 };
    const lye = lyeForFats(potash, fatTable([]), 500);
    expect(lye.pureKohG).toBeCloseTo(102.6, 9);
    expect(lye.kohG).toBeCloseTo(114, 9);
    expect(lye.lyeG).toBeCloseTo(342, 9);
    expect(lye.waterG).toBeCloseTo(342 - 114, 9);
    expect([lye.pureNaohG, lye.naohG]).toEqual([0, 0]);
  });

  /** 20 % of a 5 % vinegar on 500 g of fats: 100 g, of which 95 g are water. */
  it('leaves water out of the jug for a vinegar that replaces it, and for no other', () => {
    const vinegar = { acid: 'acetic-acid', percent: 20, strengthPercent: 5 } as const;
    const onTop = lyeForFats({ ...recipe, acids: [vinegar] }, fatTable([]), 500);
    const instead = lyeForFats(
      { ...recipe, acids: [{ ...vinegar, replacesWater: true }] },
      fatTable([]),
      500,
    );
    expect(instead.naohG).toBeCloseTo(onTop.naohG, 9);
    expect(onTop.waterG - instead.waterG).toBeCloseTo(95, 9);
    expect(onTop.lyeG - instead.lyeG).toBeCloseTo(95, 9);
  });

  it('rounds nothing', () => {
    const third = lyeForFats(recipe, fatTable([]), 1 / 3);
    expect(third.pureNaohG * 3).toBeCloseTo(lyeForFats(recipe, fatTable([]), 1).pureNaohG, 14);
  });
});

describe('superfatRange', () => {
  const wide: FatFacts = {
    ...fatTable([]).get('coconut')!,
    key: 'wide',
    saponificationMgKohPerG: { low: 180, used: 190, high: 200 },
  };
  const fats = fatTable([wide]);
  const discounted = { ...recipe, fats: [{ fat: 'wide', percent: 100 }], superfatPercent: 5 };

  /** The lye takes 0.95 · 190 = 180.5 mg of KOH per g: 1 - 180.5/180 = -0.2778 %, and 1 - 180.5/200 = 9.75 %. */
  it('is below nothing where a lot takes less than the lye brings', () => {
    const { low, used, high } = superfatRange(discounted, fats);
    expect(low).toBeCloseTo(-0.2778, 4);
    expect(used).toBeCloseTo(5, 9);
    expect(high).toBeCloseTo(9.75, 9);
  });

  /**
   * 2 % of a colour, each gram in 2 g of oil: 40 g of oil on 1000 g of fats. Free are then 50 + 40 of 1040 g, 8.6538 %;
   * at the ends -2.778 + 40 g, 3.5791 %, and 97.5 + 40 g, 13.2212 %.
   */
  it('counts the oil that carries a colour as free fat, and as a part of all fat', () => {
    const carrier = { kind: 'fat', perGram: 2 } as const;
    const colourants = [{ key: 'mica', title: 'Mica', percent: 2, carrier }];
    const { low, used, high } = superfatRange({ ...discounted, colourants }, fats);
    expect(low).toBeCloseTo(3.5791, 4);
    expect(used).toBeCloseTo(8.6538, 4);
    expect(high).toBeCloseTo(13.2212, 4);
  });

  it('counts neither a colour that is stirred in dry nor water and glycerol as fat', () => {
    const colourants = [
      { key: 'dry', title: 'Dry', percent: 2 },
      { key: 'wet', title: 'Wet', percent: 2, carrier: { kind: 'water', perGram: 3 } },
      { key: 'thick', title: 'Thick', percent: 2, carrier: { kind: 'glycerol', perGram: 3 } },
    ] as const;
    expect(superfatRange({ ...discounted, colourants }, fats)).toEqual(superfatRange(discounted, fats));
  });
});
