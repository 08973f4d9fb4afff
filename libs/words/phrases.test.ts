import fc from 'fast-check';
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

describe('two odds beside each other', () => {
  it.each([
    [0.9, 0.7, '9 in 10 instead of 7 in 10', '9 statt 7 von 10'],
    [0.62, 0.58, '62 in 100 instead of 58 in 100', '62 statt 58 von 100'],
    [0.001, 0.021, 'under 1 in 100 instead of 2 in 100', 'weniger als 1 statt 2 von 100'],
    [0.999, 0.97, 'over 99 in 100 instead of 97 in 100', 'mehr als 99 statt 97 von 100'],
    [0.0702, 0.0698, 'still about 7 in 100', 'weiterhin etwa 7 von 100'],
  ])('says %d beside %d as %s', (now, before, inEnglish, inGerman) => {
    expect(english.oddsInstead(now, before)).toBe(inEnglish);
    expect(german.oddsInstead(now, before)).toBe(inGerman);
  });

  it('are told in tens or hundreds, whatever they are', () => {
    const chance = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(chance, chance, (now, before) => {
        for (const texts of [english, german]) {
          const told = texts.oddsInstead(now, before);
          expect(told).toMatch(/ 100?( |$)/);
          expect(told).not.toMatch(/1000|\b0 |\b100 in 100|^100 statt|statt 100 von/);
        }
      }),
    );
  });
});
