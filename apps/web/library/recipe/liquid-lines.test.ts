import { expect, it } from 'vitest';
import { recipe } from '#contract';
import { turnedTo } from './liquid-lines.js';

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
