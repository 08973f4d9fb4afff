import { expect, it } from 'vitest';
import { roughBand, roughLength } from './rough-length.js';

it.each([
  [4.4, 4, 'minutes'],
  [99, 99, 'minutes'],
  [150, 2.5, 'hours'],
  [41.7 * 60, 42, 'hours'],
  [5 * 1440, 5, 'days'],
  [35 * 1440, 5, 'weeks'],
  [38 * 1440, 5.5, 'weeks'],
])('%s min is %s %s', (minutes, value, unit) => {
  expect(roughLength(minutes)).toEqual({ value, unit });
});

it('counts a band as its likely value is', () => {
  expect(roughBand({ low: 44 * 60, likely: 60 * 60, high: 82 * 60 })).toEqual({
    low: 44,
    likely: 60,
    high: 82,
    unit: 'hours',
  });
});
