import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences, isSame, valueAt, withItem, withMoved, withoutItem, withValue } from './values.js';

const recipe = {
  title: 'Base',
  fats: [
    { fat: 'olive', percent: 60 },
    { fat: 'coconut', percent: 40 },
  ],
};

describe('a value in a form', () => {
  it('is found, changed and taken away by its path, and nothing else is touched', () => {
    const changed = withValue(recipe, ['fats', 1, 'percent'], 30);
    expect(valueAt(changed, ['fats', 1, 'percent'])).toBe(30);
    expect(valueAt(recipe, ['fats', 1, 'percent'])).toBe(40);
    expect(valueAt(changed, ['fats', 0])).toBe(recipe.fats[0]);
    expect(withValue(recipe, ['title'], undefined)).toEqual({ fats: recipe.fats });
  });

  it('is made where nothing was yet', () => {
    expect(withValue({}, ['fragrance', 'percent'], 3)).toEqual({ fragrance: { percent: 3 } });
    expect(withItem({}, ['acids'], { acid: 'citric-acid' })).toEqual({ acids: [{ acid: 'citric-acid' }] });
    expect(valueAt('text', ['a', 0])).toBeUndefined();
  });

  it('moves within its list, and not out of it', () => {
    const list = { stages: ['a', 'b', 'c'] };
    expect(withMoved(list, ['stages'], 2, 0)).toEqual({ stages: ['c', 'a', 'b'] });
    expect(withMoved(list, ['stages'], 0, -1)).toBe(list);
    expect(withMoved(list, ['stages'], 2, 3)).toBe(list);
    expect(withoutItem(list, ['stages'], 1)).toEqual({ stages: ['a', 'c'] });
  });

  it('keeps what was set: the last word at a path counts', () => {
    const path = fc.array(fc.oneof(fc.constantFrom('a', 'b'), fc.nat(3)), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.jsonValue(), path, fc.integer(), (root, at, value) => {
        expect(valueAt(withValue(root as never, at, value), at)).toBe(value);
      }),
    );
  });
});

describe('two versions', () => {
  it('differ leaf by leaf', () => {
    const theirs = { title: 'Base', fats: [{ fat: 'olive', percent: 70 }], saltPercent: 1 };
    expect(differences(recipe, theirs)).toEqual([
      { path: 'fats[0].percent', mine: 60, theirs: 70 },
      { path: 'fats[1]', mine: { fat: 'coconut', percent: 40 }, theirs: undefined },
      { path: 'saltPercent', mine: undefined, theirs: 1 },
    ]);
  });

  it('are the same whatever the order of their properties, and whether a property is absent or undefined', () => {
    expect(isSame({ a: 1, b: [1, { c: 2 }] }, { b: [1, { c: 2 }], a: 1, d: undefined })).toBe(true);
    expect(isSame({ a: [] }, { a: {} })).toBe(false);
    fc.assert(
      fc.property(fc.jsonValue(), (value) => isSame(value as never, structuredClone(value) as never)),
    );
  });
});
