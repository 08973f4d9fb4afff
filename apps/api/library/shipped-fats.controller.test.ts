import { expect, it } from 'vitest';
import { shippedFats } from '#chemistry';
import { shippedFat } from '#contract';
import { ShippedFatsController } from './shipped-fats.controller.js';

const answer = new ShippedFatsController().list();

it('answers in the form that the contract describes, fat by fat', () => {
  expect(answer.map(({ key }) => key)).toEqual(shippedFats.map(({ key }) => key));
  expect(answer.filter((fat) => !shippedFat.safeParse(fat).success)).toEqual([]);
});

it('shows kind, limits, behaviour and where each figure comes from', () => {
  const shea = answer.find(({ key }) => key === 'shea-butter');
  expect(shea).toMatchObject({
    kind: 'triglyceride',
    unsaponifiablePercent: { low: 1, high: 19 },
    iodine: { low: 30, high: 75 },
    expansionGPerMlPerC: 0.00064,
  });
  expect(shea?.evidence.saponification).toEqual({
    kind: 'published',
    source: expect.stringContaining('CXS 325R-2017') as string,
  });
  expect(shea?.evidence.fattyAcids?.kind).toBe('from memory');
  expect(shea?.evidence.behaviour).toEqual({ kind: 'common practice' });
  expect(answer.find(({ key }) => key === 'beeswax')?.evidence.fattyAcids).toBeUndefined();
});
