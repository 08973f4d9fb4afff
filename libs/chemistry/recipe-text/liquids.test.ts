import { describe, expect, it } from 'vitest';
import { readRecipeText, shippedFats, shippedLiquids } from '#chemistry';

const read = (text: string) => readRecipeText(text, shippedFats);

describe('liquids in a recipe as people write it', () => {
  it.each<[string, string, number]>([
    ['100 g goat milk', 'goat-milk', 100],
    ['Ziegenmilch 120 g', 'goat-milk', 120],
    ['4 oz frozen goat’s milk', 'goat-milk', 4 * 28.349523125],
    ['Kokosmilch (Dose): 60 g', 'coconut-milk', 60],
    ['Schales Bier 200 g', 'beer', 200],
    ['gefrorene Ziegenmilch 0,1 kg', 'goat-milk', 100],
    ['50 g aloe vera', 'aloe-juice', 50],
    ['Kürbispüree 30 g', 'pumpkin-puree', 30],
    ['Apfelessig 20 g', 'cider-vinegar', 20],
    ['Buttermilch 80 g', 'buttermilk', 80],
  ])('%s', (line, liquid, grams) => {
    const { fats, liquids, lines } = read(`Olive oil 500 g\n${line}`);
    expect(fats).toEqual([{ fat: 'olive', grams: 500 }]);
    expect(liquids).toEqual([{ liquid, grams: expect.closeTo(grams, 9) as number }]);
    expect(lines[1]?.outcome.kind).toBe('liquid');
  });

  it.each([
    'goat milk powder 20 g',
    'milk thistle oil 20 g',
    'Beer fragrance oil 20 g',
    'coffee grounds 10 g',
    'carrot oil 10 g',
    'Avocado oil 50 g',
    'honey 10 g',
    'Wasser 200 g',
    'Ziegenmilch 100 ml',
    'goat milk 50 %',
    'goat milk',
  ])('not %s', (line) => {
    expect(read(`Olive oil 500 g\n${line}`).liquids).toEqual([]);
  });

  it('are not taken beside fats in shares, and added up where they come twice', () => {
    const shares = read('Olive oil 60%\nCoconut oil 40%\nGoat milk 100 g');
    expect(shares.liquids).toEqual([]);
    expect(shares.lines[2]?.outcome).toMatchObject({ kind: 'not-a-fat', what: 'other' });
    const twice = read('Goat milk 100 g\nOlive oil 500 g\nZiegenmilch 50 g\nTea 10 g');
    expect(twice.liquids).toEqual([
      { liquid: 'goat-milk', grams: 150 },
      { liquid: 'tea', grams: 10 },
    ]);
  });

  it('are at most as many as a recipe holds', () => {
    const names = ['beer', 'wine', 'coffee', 'tea', 'buttermilk', 'yoghurt', 'cream', 'lemon-juice'];
    const text = names.map(
      (key) => `${shippedLiquids.find((each) => each.key === key)?.aliases[0] ?? ''} 10 g`,
    );
    const { liquids, lines } = read(`Olive oil 500 g\n${text.join('\n')}`);
    expect(liquids).toHaveLength(6);
    expect(lines.filter(({ outcome }) => outcome.kind === 'not-a-fat')).toHaveLength(2);
  });

  it('go by names that no fat has, and no other liquid', () => {
    const fats = new Set(
      shippedFats
        .flatMap(({ key, title, aliases }) => [key, title, ...aliases])
        .map((name) => name.toLowerCase()),
    );
    const names = shippedLiquids.flatMap(({ key, title, aliases }) => [key, title, ...aliases]);
    expect(names.filter((name) => fats.has(name.toLowerCase()))).toEqual([]);
    const lower = shippedLiquids.flatMap(({ aliases }) => aliases.map((name) => name.toLowerCase()));
    expect(lower.filter((name, i) => lower.indexOf(name) < i)).toEqual([]);
  });
});
