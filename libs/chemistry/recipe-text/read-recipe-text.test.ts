import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRecipeText, recipeTextLimits, shippedFats, type LineOutcome } from '#chemistry';

fc.configureGlobal({ seed: 1 });

const read = (text: string) => readRecipeText(text, shippedFats);
const outcome = (line: string): LineOutcome | undefined => read(line).lines[0]?.outcome;
const GRAMS_PER_OUNCE = 28.349523125;

describe('a recipe as people write it', () => {
  it('is read with its fats and told line by line', () => {
    const text = [
      'Winter soap',
      '',
      '• Olive oil 500 g',
      '\t250g shea butter',
      '* Kokosöl: 200 g',
      'Rizinusöl\t50,5 g',
      'NaOH 130 g',
      'Water 260 g',
      'Lavender essential oil 30 g',
      'Superfat 5 %',
    ].join('\r\n');
    const { fats, lines, isCut } = read(text);
    expect(fats).toEqual([
      { fat: 'olive', grams: 500 },
      { fat: 'shea-butter', grams: 250 },
      { fat: 'coconut', grams: 200 },
      { fat: 'castor', grams: 50.5 },
    ]);
    expect(isCut).toBe(false);
    expect(lines.map(({ line, outcome: { kind } }) => [line, kind])).toEqual([
      [1, 'not-understood'],
      ...[3, 4, 5, 6].map((line) => [line, 'fat']),
      ...[7, 8, 9, 10].map((line) => [line, 'not-a-fat']),
    ]);
    expect(lines.flatMap((each) => (each.outcome.kind === 'not-a-fat' ? each.outcome.what : []))).toEqual([
      ...['lye', 'water', 'fragrance', 'setting'],
    ]);
  });

  /** One avoirdupois ounce is 28.349523125 g, a pound sixteen of them (yard and pound agreement of 1959). */
  it.each<[string, string, object]>([
    ['coconut, 25 %', 'coconut', { percent: 25 }],
    ['25% coconut oil', 'coconut', { percent: 25 }],
    ['palm oil 12.5 percent', 'palm', { percent: 12.5 }],
    ['Rapsöl 12,5 Prozent', 'rapeseed', { percent: 12.5 }],
    ['2 oz castor', 'castor', { grams: 2 * GRAMS_PER_OUNCE }],
    ['1 lb 4 oz lard', 'lard', { grams: 20 * GRAMS_PER_OUNCE }],
    ['1 lb. 4 oz. lard', 'lard', { grams: 20 * GRAMS_PER_OUNCE }],
    ['2½ oz cocoa butter', 'cocoa-butter', { grams: 2.5 * GRAMS_PER_OUNCE }],
    ['2 1/2 oz cocoa butter', 'cocoa-butter', { grams: 2.5 * GRAMS_PER_OUNCE }],
    ['3/4 lb tallow', 'tallow', { grams: 12 * GRAMS_PER_OUNCE }],
    ['1 Pfund Schmalz', 'lard', { grams: 500 }],
    ['0,25 kg Sheabutter', 'shea-butter', { grams: 250 }],
    ['1 kg 250 g Olivenöl', 'olive', { grams: 1250 }],
    ['1.250,5 g Olivenöl', 'olive', { grams: 1250.5 }],
    ['1,250.5 g olive oil', 'olive', { grams: 1250.5 }],
    ['Olive oil 500 g (50 %)', 'olive', { grams: 500 }],
    ['Olive oil 50 % 500 g', 'olive', { grams: 500 }],
    ['Bio-Olivenöl, kaltgepresst 300 g', 'olive', { grams: 300 }],
    ['KOKOSOEL 100 G', 'coconut', { grams: 100 }],
    ['Olea Europaea Fruit Oil 100 g', 'olive', { grams: 100 }],
    ['Canola 100 g', 'rapeseed', { grams: 100 }],
    ['watermelon seed oil 20 g', 'watermelon-seed', { grams: 20 }],
    ['milk thistle oil 20 g', 'milk-thistle', { grams: 20 }],
    ['Stearic acid 95 % 20 g', 'stearic-acid-95', { grams: 20 }],
    ['coconut oil 76 500 g', 'coconut', { grams: 500 }],
  ])('takes “%s”', (line, fat, amount) => {
    const [key] = Object.keys(amount);
    expect(outcome(line)).toMatchObject({ kind: 'fat', fat, doubts: [] });
    expect(read(line).fats[0]).toHaveProperty(
      key ?? '',
      expect.closeTo(Object.values(amount)[0] as number, 9),
    );
  });

  it.each<[string, object]>([
    ['1.250 g olive oil', { fat: 'olive', amount: { grams: 1250 }, doubts: ['thousands'] }],
    ['1.250 kg olive oil', { fat: 'olive', amount: { grams: 1250 }, doubts: ['thousands'] }],
    ['1 250 g olive oil', { fat: 'olive', amount: { grams: 250 }, doubts: ['extra-number'] }],
    ['500-600 g olive oil', { fat: 'olive', amount: { grams: 600 }, doubts: ['extra-number'] }],
    ['olive oil 500 g 30 oz', { fat: 'olive', amount: { grams: 500 }, doubts: ['two-amounts'] }],
    ['1 lb lard (4 oz)', { fat: 'lard', amount: { grams: 16 * GRAMS_PER_OUNCE }, doubts: ['two-amounts'] }],
    ['olive oil 40 % 50 %', { fat: 'olive', amount: { percent: 40 }, doubts: ['two-amounts'] }],
    ['olive oil from aunt Ida 500 g', { fat: 'olive', doubts: ['part-of-name'] }],
    ['Stearic acid 95 g', { fat: 'stearic-acid', doubts: ['other-fats'], others: ['stearic-acid-95'] }],
    ['Elaeis Guineensis Oil 10 g', { fat: 'palm', doubts: ['other-fats'] }],
  ])('takes “%s” with a doubt', (line, expected) => {
    expect(outcome(line)).toMatchObject({ kind: 'fat', ...expected });
  });

  it.each<[string, object]>([
    [
      'olvie oil 500 g',
      { kind: 'unknown-fat', name: 'olvie oil', nearest: ['olive', expect.any(String), expect.any(String)] },
    ],
    ['Kokusöl 200 g', { kind: 'unknown-fat', nearest: ['coconut', expect.any(String), expect.any(String)] }],
    ['olive oil', { kind: 'no-amount', fat: 'olive', why: 'none' }],
    ['olive oil 500', { kind: 'no-amount', fat: 'olive', why: 'no-unit' }],
    ['500 ml olive oil', { kind: 'no-amount', fat: 'olive', why: 'by-volume' }],
    ['2 EL Rizinusöl', { kind: 'no-amount', fat: 'castor', why: 'by-volume' }],
    ['olive oil 0 g', { kind: 'no-amount', fat: 'olive', why: 'out-of-range' }],
    ['olive oil 150 %', { kind: 'no-amount', fat: 'olive', why: 'out-of-range' }],
    ['olive oil 5000 kg', { kind: 'no-amount', fat: 'olive', why: 'out-of-range' }],
    ['Natriumhydroxid 120 g', { kind: 'not-a-fat', what: 'lye', amount: { grams: 120 } }],
    ['NaOH-Lauge', { kind: 'not-a-fat', what: 'lye' }],
    ['destilliertes Wasser 300 ml', { kind: 'not-a-fat', what: 'water' }],
    ['lye concentration 33 %', { kind: 'not-a-fat', what: 'setting' }],
    ['total oils 1000 g', { kind: 'not-a-fat', what: 'total' }],
    ['Meersalz und Salz 10 g', { kind: 'not-a-fat', what: 'other' }],
    ['***', { kind: 'not-understood' }],
    ['12 g', { kind: 'not-understood' }],
    [`olive oil ${'x'.repeat(200)} 5 g`, { kind: 'too-long' }],
  ])('does not take “%s”, and says why', (line, expected) => {
    expect(outcome(line)).toMatchObject(expected);
    expect(read(line).fats).toEqual([]);
  });

  it('takes one sort of amounts, that of the first fat', () => {
    const mixed = read('olive oil 60 %\ncoconut oil 300 g\npalm oil 40 %');
    expect(mixed.fats).toEqual([
      { fat: 'olive', percent: 60 },
      { fat: 'palm', percent: 40 },
    ]);
    expect(mixed.lines[1]?.outcome).toEqual({ kind: 'other-sort', fat: 'coconut', amount: { grams: 300 } });
  });

  it('adds up a fat that stands twice', () => {
    expect(read('olive oil 100 g\nOlivenöl 50 g').fats).toEqual([{ fat: 'olive', grams: 150 }]);
  });

  it('takes for a line what was chosen for it, where it has an amount', () => {
    const text = 'olvie oil 100 g\nStearic acid 20 g\nwater 30 g\ncoconut oil';
    const chosen = new Map([1, 2, 3, 4].map((line) => [line, 'palm'] as const));
    expect(readRecipeText(text, shippedFats, chosen).fats).toEqual([{ fat: 'palm', grams: 120 }]);
    expect(readRecipeText(text, shippedFats, new Map([[1, 'olive']])).fats).toEqual([
      { fat: 'olive', grams: 100 },
      { fat: 'stearic-acid', grams: 20 },
    ]);
  });

  it('stops at as many fats as a recipe holds', () => {
    const text = shippedFats.slice(0, 31).map(({ key }) => `${key} 10 g`);
    const { fats, lines } = read(text.join('\n'));
    expect(fats).toHaveLength(30);
    expect(lines.at(-1)?.outcome).toEqual({ kind: 'too-many-fats' });
  });

  it('finds every shipped fat by key, title and each other name', () => {
    const missed = shippedFats.flatMap(({ key, title, aliases }) => {
      const { lines } = read([key, title, ...aliases].map((name) => `${name}: 10 g`).join('\n'));
      return lines.filter(
        ({ outcome: found }) => found.kind !== 'fat' || (found.fat !== key && !found.others.includes(key)),
      );
    });
    expect(missed).toEqual([]);
  });

  it('finds a fat of the maker’s own', () => {
    const own = { ...shippedFats[0], key: 'own-blend', title: 'Blend of ours (invented)', aliases: [] };
    const { fats } = readRecipeText('blend of ours 10 g', [own as (typeof shippedFats)[number]]);
    expect(fats).toEqual([{ fat: 'own-blend', grams: 10 }]);
  });
});

describe('any text', () => {
  const piece = fc.oneof(
    fc.constantFrom(
      ...[
        'olive',
        'oil',
        'Öl',
        '1',
        '1.',
        ',5',
        '½',
        '/',
        '%',
        'g',
        'kg',
        'lb',
        'oz',
        '\n',
        '\t',
        '-',
        ':',
        ' ',
      ],
    ),
    fc.string({ unit: 'binary', maxLength: 6 }),
  );
  const anyText = fc.array(piece, { maxLength: 80 }).map((pieces) => pieces.join(''));

  it('is read without an error, and every line that is not empty is told once', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { fats, lines } = read(text);
        const written = text
          .split(/\r\n|\r|\n|\u2028|\u2029/)
          .flatMap((line, at) => (line.trim() === '' ? [] : [at + 1]));
        expect(lines.map(({ line }) => line)).toEqual(
          written.filter((line) => line <= recipeTextLimits.lines),
        );
        for (const fat of fats) {
          const amount = 'grams' in fat ? fat.grams / 1_000_000 : fat.percent / 100;
          expect(amount).toBeGreaterThan(0);
          expect(Number.isFinite(amount)).toBe(true);
        }
        expect(new Set(fats.map((fat) => 'grams' in fat)).size).toBeLessThanOrEqual(1);
        expect(new Set(fats.map(({ fat }) => fat)).size).toBe(fats.length);
      }),
    );
  });

  /** What is written and read again is the same, in either notation. */
  it('gives back what was written', () => {
    const fat = fc.constantFrom(...shippedFats.map(({ key }) => key));
    const line = fc.record({
      fat,
      tenths: fc.integer({ min: 1, max: 9999 }),
      comma: fc.boolean(),
      first: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(line, { selector: (each) => each.fat, minLength: 1, maxLength: 10 }),
        (recipe) => {
          const text = recipe.map(({ fat: key, tenths, comma, first }) => {
            const number = (tenths / 10).toFixed(1).replace('.', comma ? ',' : '.');
            return first ? `${number} g ${key}` : `${key}: ${number} g`;
          });
          expect(read(text.join('\n')).fats).toEqual(
            recipe.map((each) => ({ fat: each.fat, grams: each.tenths / 10 })),
          );
        },
      ),
    );
  });

  it('is read as far as the bounds go, and says that it was longer', () => {
    const long = read('olive oil 1 g\n'.repeat(recipeTextLimits.lines + 1));
    expect(long.isCut).toBe(true);
    expect(long.fats).toEqual([{ fat: 'olive', grams: recipeTextLimits.lines }]);
    expect(read('x'.repeat(recipeTextLimits.characters + 1)).isCut).toBe(true);
  });

  it.each(['1', '1,', '1/', 'g ', '½', 'olive ', 'x', 'Öl'])('full of “%s” is no trouble', (piece) => {
    const line = piece.repeat(recipeTextLimits.lineCharacters / piece.length);
    const text = `${line}\n`.repeat(recipeTextLimits.characters / (line.length + 1));
    const { fats, lines } = read(text);
    expect(fats).toEqual([]);
    expect(lines.length).toBeGreaterThan(90);
  });
});
