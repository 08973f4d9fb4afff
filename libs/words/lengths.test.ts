import { expect, it } from 'vitest';
import { textsFor } from './index.js';
import { en } from './en/index.js';

const { duration } = textsFor({ language: 'en', units: 'metric', timeZone: 'UTC' }, en);

it.each([
  [35, '35 min'],
  [89.6, '90 min'],
  [90, '1 h 30'],
  [570, '9 h 30'],
  [600, '10 h'],
  [2460, '41 h'],
  [7200, '5 days'],
  [50_400, '5 weeks'],
  [52_000, '5.2 weeks'],
])('%d minutes are %s', (length, text) => {
  expect(duration(length)).toBe(text);
});
