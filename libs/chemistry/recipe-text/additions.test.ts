import { describe, expect, it } from 'vitest';
import { readRecipeText, shippedFats } from '#chemistry';

const read = (text: string) => readRecipeText(text, shippedFats);

describe('honey in a recipe as people write it', () => {
  it.each<[string, number]>([
    ['honey 10 g', 1.25],
    ['Honig: 20 g', 2.5],
    ['raw honey, 1 oz', 3.54],
    ['- 16g Bienenhonig', 2],
    ['honey 2 %', 2],
  ])('%s', (line, percent) => {
    const { additions, lines, fats } = read(`Olive oil 500 g\nCoconut oil 300 g\n${line}`);
    expect(additions).toEqual([{ kind: 'honey', percent }]);
    expect(fats).toHaveLength(2);
    expect(lines[2]?.outcome).toMatchObject({ kind: 'addition', addition: 'honey' });
  });

  it.each(['Honey fragrance oil 20 g', 'oat milk and honey 30 g', 'honey', 'honey 1 tbsp', 'honey 600 g'])(
    'not %s',
    (line) => {
      expect(read(`Olive oil 500 g\n${line}`).additions).toEqual([]);
    },
  );

  it('is a share of the fats beside fats in shares, and no weight there; twice is added up', () => {
    expect(read('Olive oil 60%\nCoconut oil 40%\nHoney 1%\nhoney 0.5 %').additions).toEqual([
      { kind: 'honey', percent: 1.5 },
    ]);
    const weight = read('Olive oil 60%\nCoconut oil 40%\nHoney 10 g');
    expect(weight.additions).toEqual([]);
    expect(weight.lines[2]?.outcome).toMatchObject({ kind: 'not-a-fat', what: 'other' });
    expect(read('Honey 10 g').additions).toEqual([]);
  });
});
