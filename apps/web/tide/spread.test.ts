import fc from 'fast-check';
import { expect, it } from 'vitest';
import { spread } from './spread.js';

it('leaves marks that have room where they are', () => {
  expect(spread([0, 20, 50], 20)).toEqual([0, 20, 50]);
});

it('moves a crowd apart around its middle', () => {
  expect(spread([10, 10, 10], 6)).toEqual([4, 10, 16]);
  expect(spread([0, 1, 40], 11)).toEqual([-5, 6, 40]);
});

it('gives each room, in order, and moves the whole nowhere', () => {
  const places = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(places, (found) => {
      const wanted = [...found].sort((a, b) => a - b);
      const given = spread(wanted, 20);
      given.slice(1).forEach((place, i) => expect(place - given[i]!).toBeGreaterThanOrEqual(20 - 1e-9));
      const sum = (list: readonly number[]): number => list.reduce((all, each) => all + each, 0);
      expect(sum(given)).toBeCloseTo(sum(wanted), 6);
    }),
  );
});
