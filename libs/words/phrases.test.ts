import { describe, expect, it } from 'vitest';
import { en } from './en/index.js';
import { textsFor } from './index.js';
import { de } from './de/index.js';

const english = textsFor({ language: 'en', units: 'metric', timeZone: 'Europe/Berlin' }, en);
const german = textsFor({ language: 'de', units: 'us', timeZone: 'Europe/Berlin' }, de);

describe('odds in words', () => {
  it.each([
    [0.617, 'about 6 in 10'],
    [0.5, 'about 5 in 10'],
    [0.07, 'about 7 in 100'],
    [0.97, 'about 97 in 100'],
    [0.999, 'over 99 in 100'],
    [1, 'over 99 in 100'],
    [0, 'under 1 in 100'],
  ])('says %d as %s', (probability, text) => {
    expect(english.odds(probability)).toBe(text);
  });

  it('speaks German too', () => {
    expect(german.odds(0.617)).toBe('etwa 6 von 10');
  });
});

describe('lengths of time', () => {
  it.each([
    [35, '35 min', '35 min'],
    [570, '9 h 30', '9 h 30'],
    [41 * 60, '41 h', '41 h'],
    [5 * 1440, '5 days', '5 Tage'],
    [35 * 1440, '5 weeks', '5 Wochen'],
    [24.5 * 1440, '3.5 weeks', '3,5 Wochen'],
  ])('says %d min as %s', (minutes, inEnglish, inGerman) => {
    expect(english.duration(minutes)).toBe(inEnglish);
    expect(german.duration(minutes)).toBe(inGerman);
  });

  it('says a band in the unit of its likely value', () => {
    expect(english.band({ low: 70, likely: 120, high: 240 })).toBe('2 h (1 h 10 to 4 h)');
    expect(german.band({ low: 1440, likely: 2880, high: 5760 })).toBe('48 h (24 h bis 96 h)');
  });
});
