import { expect, it } from 'vitest';
import { recipe } from '#contract';
import { inShares, turnedTo } from './liquid-lines.js';

const milk = { liquid: 'goat-milk', addedTo: 'batter', percentOfLiquid: 30 };

it('tells a liquid in one way only, and keeps the rest of its line', () => {
  const weight = turnedTo(milk, 'grams');
  expect(weight).toEqual({ liquid: 'goat-milk', addedTo: 'batter', grams: 100 });
  expect(turnedTo(weight, 'percent')).toEqual({ ...milk, percentOfLiquid: 50 });
  expect(turnedTo(milk, 'percent')).toEqual(milk);
});

it('makes lines that the contract takes', () => {
  const draft = { key: 'bar', title: 'Bar', fats: [{ fat: 'olive', grams: 500 }] };
  for (const sort of ['percent', 'grams'] as const) {
    const read = recipe.safeParse({ ...draft, liquids: [turnedTo(milk, sort)] });
    expect(read.success).toBe(true);
  }
});

it('turns weights into the shares that they were of all liquid, and leaves shares alone', () => {
  const bare = { key: '', title: '', text: '', waterG: 0, fatG: 0, sugarG: 0, addedTo: 'lye' as const };
  const batch = {
    waterG: 50,
    liquids: [
      { ...bare, massG: 100 },
      { ...bare, massG: 50 },
    ],
  };
  const lines = [
    { liquid: 'beer', grams: 60 },
    { ...milk, liquid: 'tea' },
  ];
  expect(inShares(lines, batch)).toEqual([
    { liquid: 'beer', percentOfLiquid: 50 },
    { ...milk, liquid: 'tea' },
  ]);
  expect(inShares(lines, undefined)[0]).toEqual({ liquid: 'beer', percentOfLiquid: 50 });
  expect(
    inShares([{ liquid: 'tea', grams: 1 }], { waterG: 100, liquids: [{ ...bare, massG: 300 }] }),
  ).toEqual([{ liquid: 'tea', percentOfLiquid: 75 }]);
});
