import fc from 'fast-check';
import { expect, it } from 'vitest';
import { key } from '#contract';
import { newKey } from './new-key.js';

it.each([
  ['Six-sided cavities', [], 'six-sided-cavities'],
  ['  Große Würfel ', [], 'grosse-wuerfel'],
  ['Crème', [], 'creme'],
  ['24 drops', [], 'drops'],
  ['海', [], 'new'],
  ['Base', ['base', 'base-2'], 'base-3'],
  ['A very long title that no key could ever hold in full', [], 'a-very-long-title-that-no-key-could-ever'],
])('%s', (title, taken, name) => {
  expect(newKey(title, taken)).toBe(name);
});

it('is a key as the contract wants it, and not taken', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), (title) => {
      const first = newKey(title, []);
      const second = newKey(title, [first]);
      expect(key.safeParse(first).success && key.safeParse(second).success && first !== second).toBe(true);
    }),
  );
});
