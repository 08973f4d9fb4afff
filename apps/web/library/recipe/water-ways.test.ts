import { expect, it } from 'vitest';
import { waterIn, waterWay } from './water-ways.js';

it('knows in which way the water was told', () => {
  expect(waterWay({})).toBe('lyeConcentrationPercent');
  expect(waterWay({ waterPerLye: 2 })).toBe('waterPerLye');
  // A field that holds a text which is no number yet is still the way it is told in.
  expect(waterWay({ waterPercentOfFats: 'x' })).toBe('waterPercentOfFats');
});

it('tells the same water in another way', () => {
  // 100 g of lye in 200 g of water: 100/300 = 33.3 %
  const views = { lyeConcentrationPercent: 100 / 3, waterPerLye: 2.004, waterPercentOfFats: 28.06 };
  expect(waterIn('lyeConcentrationPercent', views)).toBe(33.3);
  expect(waterIn('waterPerLye', views)).toBe(2);
  expect(waterIn('waterPercentOfFats', views)).toBe(28.1);
  expect(waterIn('waterPerLye', undefined)).toBe(2);
});
