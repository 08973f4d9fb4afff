import { describe, expect, it } from 'vitest';
import { fromSheet, shippedFats, type FatFacts } from '#chemistry';
import { nearestFats } from './nearest-fats.js';

/** A fat of which only its key and title matter here. */
function named(key: string, title = key): FatFacts {
  return fromSheet({
    key,
    title,
    saponificationMgKohPerG: { low: 188, used: 189, high: 190 },
    fattyAcidsPercent: { 'C18:1': 100 },
    densityGPerMl: 0.913,
    source: 'invented',
  });
}

function nearest(typed: string, ...keys: string[]): string[] {
  return nearestFats(
    typed,
    keys.map((key) => named(key)),
    keys.length,
  );
}

describe('the fats most like what was typed', () => {
  /**
   * Edit distances by hand: mitten 1, smitten 2 (k for m, an s more), kitchen 2 (t for c, an h more), sitting 3 (the
   * example that textbooks give), kit 3; over the longer length 1/6, 2/7, 2/7, 3/7, 3/6.
   */
  it('are ordered by the edit distance over the longer length, and those alike by their names', () => {
    expect(nearest('kitten', 'kit', 'sitting', 'smitten', 'kitchen', 'mitten')).toEqual([
      ...['mitten', 'kitchen', 'smitten', 'sitting', 'kit'],
    ]);
    expect(nearest('kitten', 'mitten', 'kitchen', 'smitten', 'sitting', 'kit')[1]).toBe('kitchen');
  });

  it('count what is missing at either end, and what is too much', () => {
    expect(nearest('abcdef', 'abcd', 'abcde', 'abcdefg', 'abcdefghi')).toEqual([
      ...['abcdefg', 'abcde', 'abcd', 'abcdefghi'],
    ]);
    expect(nearest('abcdef', 'cdef', 'bcdef', 'xabcdef')).toEqual(['xabcdef', 'bcdef', 'cdef']);
  });

  it('begin with the one that shares most of what was typed, where several share a word', () => {
    expect(nearest('palm kernel oil', 'apricot-kernel', 'palm', 'palm-kernel')[0]).toBe('palm-kernel');
    expect(nearest('shea', 'shea-butter-refined', 'shea-butter')[0]).toBe('shea-butter');
  });

  it('are as many as asked for, or all that there are', () => {
    const table = [named('olive'), named('coconut'), named('palm')];
    expect(nearestFats('olvie', table, 2)).toHaveLength(2);
    expect(nearestFats('olvie', table, 9)).toHaveLength(3);
    expect(nearestFats('', table, 3)).toHaveLength(3);
  });

  it('are not alike for words that many fats share', () => {
    expect(nearest('walnut oil', 'oil-of-roses', 'walnuts')[0]).toBe('walnuts');
    expect(nearest('refined walnut butter', 'refined-butter', 'walnuts')[0]).toBe('walnuts');
  });

  it('are not alike for words of two letters', () => {
    expect(nearest('aceite de coco', 'grasa-de-vaca', 'coconut')[0]).toBe('coconut');
    expect(nearest('aceite de soy', 'grasa-de-vaca', 'soya')[0]).toBe('soya');
  });

  it('are found by one word of several, with letters of any alphabet', () => {
    expect(nearestFats('olívový', [named('a', 'Palmový'), named('b', 'Olívový olej')], 1)).toEqual(['b']);
    expect(nearest('nut, wal', 'coconut-fat', 'wal')[0]).toBe('wal');
  });

  // Last, since it takes longest.
  it('begin with the fat itself, by its key or its title, in any case', () => {
    for (const { key, title } of shippedFats) {
      expect(nearestFats(key, shippedFats, 1)).toEqual([key]);
      expect(nearestFats(title.toUpperCase(), shippedFats, 1)).toEqual([key]);
    }
  });
});
