import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber, writeNumber } from './numbers.js';

describe('a number as it is typed', () => {
  it.each([
    ['2.5', 'en', 2.5],
    ['2,5', 'en', 2.5],
    ['2,5', 'de', 2.5],
    ['2.5', 'de', 2.5],
    ['−3', 'en', -3],
    ['.5', 'en', 0.5],
    ['0,005', 'en', 0.005],
    ['1.125', 'en', 1.125],
    // Either a thousand or one: refused, not guessed.
    ['1,000', 'en', undefined],
    ['1.000', 'de', undefined],
    ['1.000,5', 'de', undefined],
    ['', 'en', undefined],
    ['-', 'en', undefined],
    ['3 oz', 'en', undefined],
    ['1e3', 'en', undefined],
  ] as const)('%s in %s is %s', (text, language, value) => {
    expect(readNumber(text, language)).toBe(value);
  });

  it('is read back as it was written', () => {
    const number = fc.integer({ min: -1e9, max: 1e9 }).map((n) => n / 1e4);
    fc.assert(
      fc.property(number, fc.constantFrom('en' as const, 'de' as const), (value, language) => {
        expect(readNumber(writeNumber(value, language), language)).toBeCloseTo(value, 9);
      }),
    );
  });
});
