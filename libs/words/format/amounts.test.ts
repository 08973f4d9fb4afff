import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountsIn } from './amounts.js';

/** Intl puts no-break spaces in some places; which, is its own affair. */
const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');

describe('amounts as they are shown', () => {
  const metric = amountsIn('en', 'metric');
  const us = amountsIn('en', 'us');
  const german = amountsIn('de', 'metric');

  it('writes grams as finely as scales show them', () => {
    expect([0.254, 12.34, 99.96, 486.4].map(metric.mass)).toEqual(['0.25 g', '12.3 g', '100 g', '486 g']);
    expect(plain(german.mass(1234.4))).toBe('1.234 g');
    expect(plain(german.mass(12.34))).toBe('12,3 g');
  });

  // 1 lb is 453.59237 g by the international yard and pound agreement of 1959; a US fluid ounce is 29.5735 ml.
  it('writes pounds and ounces, and never sixteen of them', () => {
    expect(us.mass(453.59237)).toBe('1 lb');
    expect(us.mass(453.59237 * 1.25)).toBe('1 lb 4 oz');
    expect(us.mass(453.59237 * 2 - 0.001)).toBe('2 lb');
    expect(us.mass(100)).toBe('3.53 oz');
    expect(us.mass(-100)).toBe('−3.53 oz');
    expect([1, 0.1, 0.01, -0.1].map(us.mass)).toEqual(['0.035 oz', '0.0035 oz', '0.0004 oz', '−0.0035 oz']);
    expect(us.volume(29.5735)).toBe('1 fl oz');
    expect(plain(amountsIn('de', 'us').volume(44.36))).toBe('1,5 fl oz');
  });

  it('writes temperatures, lengths and shares', () => {
    expect(plain(metric.temperature(21.5))).toBe('21.5 °C');
    expect(plain(us.temperature(100))).toBe('212 °F');
    expect(us.length(63.5)).toBe('2.5 in');
    expect(metric.percent(5)).toBe('5%');
    expect(plain(german.percent(5.5))).toBe('5,5 %');
    expect(metric.share(0.905)).toBe('90.5%');
    expect(german.number(1234.56)).toBe('1.234,6');
  });

  it('gives back what was typed, in any unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500_000 }), (hundredths) => {
        for (const system of ['metric', 'us'] as const) {
          for (const kind of ['mass', 'volume', 'length'] as const) {
            const field = amountsIn('en', system).field[kind];
            expect(field.shown(field.meant(hundredths / 100))).toBe(hundredths / 100);
          }
        }
      }),
    );
    expect(us.field.mass.sign).toBe('oz');
    expect(us.field.mass.meant(16)).toBeCloseTo(453.59237, 4);
    expect(us.field.temperature.meant(212)).toBeCloseTo(100, 9);
  });
});
