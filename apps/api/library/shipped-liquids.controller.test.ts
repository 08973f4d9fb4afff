import { expect, it } from 'vitest';
import { shippedLiquids } from '#chemistry';
import { shippedLiquid } from '#contract';
import { ShippedLiquidsController } from './shipped-liquids.controller.js';

const answer = new ShippedLiquidsController().list();

it('answers in the form that the contract describes, liquid by liquid', () => {
  expect(answer.map(({ key }) => key)).toEqual(shippedLiquids.map(({ key }) => key));
  expect(answer.filter((liquid) => !shippedLiquid.safeParse(liquid).success)).toEqual([]);
});

it('shows what a liquid holds, how far it varies, and where that was read', () => {
  expect(answer.find(({ key }) => key === 'goat-milk')).toMatchObject({
    figures: { waterG: 87.03, fatG: 4.14, acid: { acid: 'lactic-acid' } },
    ranges: { fatG: { low: 3.3, high: 4.5 } },
    fat: 'milk-fat',
    allergens: ['milk'],
    evidence: { figures: { kind: 'published' }, inci: { kind: 'from memory' } },
  });
});
