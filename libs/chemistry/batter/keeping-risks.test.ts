import { describe, expect, it } from 'vitest';
import { fatTable, polyunsaturatedPercent, shippedFats } from '#chemistry';
import { calmRecipe, risksOf } from '../../../tests/support/calm-recipe.js';
import { fatAllergen } from '../fats/fat-allergen.js';
import { keepingRisks } from './keeping-risks.js';

const fats = fatTable([]);
const blend = (fat: string, percent: number) => ({
  fats: [
    { fat, percent },
    { fat: 'coconut', percent: 100 - percent },
  ],
});
const found = (code: string, over: object, fatsG?: number) =>
  risksOf(over, fatsG).filter((risk) => risk.code === code);

describe('fats that turn rancid', () => {
  /** Codex CXS 210, tables of fatty acids: sunflower 48.3–74 % linoleic, linseed mostly linolenic; coconut hardly any. */
  it('are told by their linoleic and linolenic acid, from 15 % of the fats on', () => {
    for (const fat of ['sunflower', 'linseed', 'grape-seed']) {
      const share = (percent: number): number => polyunsaturatedPercent(blend(fat, percent), fats);
      const perPercent = share(100) - share(0);
      const at15 = ((15 - share(0)) / perPercent) * 100;
      expect(found('fats.turn-rancid', blend(fat, at15 - 0.1)), fat).toEqual([]);
      expect(found('fats.turn-rancid', blend(fat, at15 + 0.1)), fat).toMatchObject([{ level: 'low' }]);
      const at25 = ((25 - share(0)) / perPercent) * 100;
      expect(found('fats.turn-rancid', blend(fat, at25 + 0.1)), fat).toMatchObject([{ level: 'medium' }]);
    }
    expect(found('fats.turn-rancid', blend('olive', 99))).toEqual([]);
    expect(found('fats.turn-rancid', blend('high-oleic-sunflower', 99))).toEqual([]);
  });

  it('count for more in soap with much free oil', () => {
    const level = (superfatPercent: number) =>
      found('fats.turn-rancid', { ...blend('sunflower', 30), superfatPercent })[0]?.level;
    expect([level(8), level(9)]).toEqual(['low', 'medium']);
  });
});

describe('fats that people react to', () => {
  it('are named with what they come from, whatever their share', () => {
    const recipe = {
      ...calmRecipe,
      fats: [
        { fat: 'sweet-almond', percent: 1 },
        { fat: 'olive', percent: 97 },
        { fat: 'lanolin', percent: 2 },
      ],
    };
    expect(keepingRisks(recipe, fats)).toMatchObject([
      {
        ...{ code: 'fats.allergens', level: 'low' },
        fats: [
          { fat: 'sweet-almond', allergen: 'tree-nut' },
          { fat: 'lanolin', allergen: 'wool' },
        ],
      },
    ]);
    expect(found('fats.allergens', {})).toEqual([]);
  });

  it('are told where suppliers advise against them', () => {
    expect(found('fats.advised-against', blend('neem', 1))).toMatchObject([
      { level: 'low', fats: [{ fat: 'neem', title: 'Neem oil' }] },
    ]);
    expect(found('fats.advised-against', blend('olive', 90))).toEqual([]);
  });

  /** Regulation (EU) No 1169/2011, Annex II: nuts, peanuts, soybeans, sesame, cereals containing gluten, mustard. */
  it('are found among the shipped fats by plant, and coconut, shea and apricot are not among them', () => {
    const keys = (allergen: string): string[] =>
      shippedFats
        .filter((fat) => (fatAllergen(fat) ?? 'none') === allergen)
        .map(({ key }) => key)
        .sort();
    expect(keys('tree-nut')).toEqual([
      ...['brazil-nut', 'hazelnut', 'macadamia', 'pecan', 'pistachio', 'sweet-almond', 'walnut'],
    ]);
    expect(keys('peanut')).toEqual(['peanut']);
    expect(keys('sesame')).toEqual(['sesame']);
    expect(keys('wheat')).toEqual(['wheat-germ']);
    expect(keys('wool')).toEqual(['lanolin']);
    expect(keys('soya').length).toBeGreaterThanOrEqual(2);
    for (const key of ['coconut', 'shea-butter', 'apricot-kernel', 'olive'])
      expect(keys('none')).toContain(key);
  });

  it('are found in an own fat by its name for the label', () => {
    const named = (inci: string) => fatAllergen({ inci });
    expect(named(' PRUNUS AMYGDALUS DULCIS (Sweet Almond) Oil')).toBe('tree-nut');
    expect(named('Prunus Armeniaca Kernel Oil')).toBeUndefined();
    expect(fatAllergen({})).toBeUndefined();
  });
});

describe('a batch that is heavier than one person lifts', () => {
  it('is told from 23 kg on, with the batches that it would take', () => {
    const perGram = batchMassPerFat();
    expect(found('batch.heavy', {}, 22_990 / perGram)).toEqual([]);
    expect(found('batch.heavy', {}, 23_010 / perGram)).toMatchObject([
      { level: 'medium', liftsG: 23_000, batches: 2 },
    ]);
    const [risk] = found('batch.heavy', {}, 100_000 / perGram);
    expect(risk).toMatchObject({ level: 'high', batches: 5 });
  });
});

/** Grams of batter for each gram of fats, from a batch far above any limit. */
function batchMassPerFat(): number {
  const [risk] = found('batch.heavy', {}, 1_000_000);
  if (risk?.code !== 'batch.heavy') throw new Error('a ton was not told');
  return risk.massG / 1_000_000;
}
