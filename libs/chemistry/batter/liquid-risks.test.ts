import { describe, expect, it } from 'vitest';
import type { LiquidShare } from '#chemistry';
import { risksOf } from '../../../tests/support/calm-recipe.js';

const told = (...liquids: LiquidShare[]): string[] =>
  risksOf({ liquids })
    .map(({ code }) => code)
    .filter((code) => code.startsWith('liquid.') || code === 'sugar.heats');

const half = (liquid: string, addedTo: 'lye' | 'batter' = 'lye'): LiquidShare => ({
  liquid,
  percentOfLiquid: 50,
  addedTo,
});

/** Common practice, no source: what makers say of each. */
describe('what is told of a liquid', () => {
  it.each<[string, LiquidShare, string[]]>([
    ['tea', half('tea'), []],
    ['coffee', half('coffee'), []],
    ['goat’s milk in the lye', half('goat-milk'), ['liquid.scorches', 'liquid.adds-fat']],
    ['goat’s milk in the batter', half('goat-milk', 'batter'), ['liquid.adds-fat']],
    ['beer in the lye', half('beer'), ['liquid.boils-over']],
    ['wine in the batter', half('wine', 'batter'), ['liquid.boils-over']],
    ['vinegar in the lye', half('cider-vinegar'), ['liquid.spits']],
    ['lemon juice in the batter', half('lemon-juice', 'batter'), ['liquid.spits']],
    [
      'banana in the lye',
      { ...half('banana-puree'), percentOfLiquid: 65 },
      ['sugar.heats', 'liquid.scorches', 'liquid.spoils'],
    ],
    ['oat drink in the lye', half('oat-drink'), ['liquid.scorches']],
    ['brine', half('brine'), []],
  ])('%s', (_, share, codes) => {
    expect(told(share)).toEqual(codes);
  });

  it('goes by its figures where it has its own', () => {
    const own = (figures: object): LiquidShare => ({
      ...half('house-drink'),
      own: { title: 'House drink', ...figures },
    });
    expect(told(own({}))).toEqual([]);
    expect(told(own({ sugarPercent: 1, proteinPercent: 1 }))).toEqual(['liquid.scorches']);
    expect(told(own({ alcoholPercent: 5 }))).toEqual(['liquid.boils-over']);
    expect(told(own({ acid: { acid: 'acetic-acid', percent: 5 } }))).toEqual(['liquid.spits']);
  });

  it('names each liquid once, and the superfat that its fat makes', () => {
    const risks = risksOf({
      liquids: [
        { liquid: 'coconut-milk', percentOfLiquid: 40, addedTo: 'lye' },
        { liquid: 'coconut-milk', percentOfLiquid: 20, addedTo: 'batter' },
        { liquid: 'pumpkin-puree', percentOfLiquid: 10, addedTo: 'lye' },
      ],
    });
    const scorches = risks.find(({ code }) => code === 'liquid.scorches');
    expect(scorches).toMatchObject({ liquids: [{ liquid: 'coconut-milk' }, { liquid: 'pumpkin-puree' }] });
    const fat = risks.find(({ code }) => code === 'liquid.adds-fat');
    if (fat?.code !== 'liquid.adds-fat') throw new Error('nothing of the fat');
    expect(fat.fatPercent).toBeGreaterThan(3);
    // 5 % of superfat and about as much fat again as the milk brings, which takes a third more alkali than the oils.
    expect(fat.superfatPercent).toBeGreaterThan(5 + fat.fatPercent);
    expect(fat.superfatPercent).toBeLessThan(5 + 1.4 * fat.fatPercent);
  });

  it('counts the salt of brine and the acid of vinegar with the recipe’s own', () => {
    const codes = (over: object): string[] => risksOf(over).map(({ code }) => code);
    expect(codes({ liquids: [{ liquid: 'brine', percentOfLiquid: 60 }] })).toContain('salt.much');
    const sour = (percentOfLiquid: number) => ({
      lyeConcentrationPercent: 25,
      liquids: [{ liquid: 'lemon-juice', percentOfLiquid }],
    });
    expect(codes(sour(100))).toContain('acid.takes-much');
    expect(codes(sour(10))).not.toContain('acid.takes-much');
  });
});
