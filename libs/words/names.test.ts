import { describe, expect, it } from 'vitest';
import { shippedFats, shippedLiquids } from '#chemistry';
import { floorList, rules } from '#clocks';
import { clockRuleIds } from '#contract';
import { en } from './en/index.js';
import { textsFor } from './index.js';
import { de } from './de/index.js';
import { materials } from './en/materials.js';

const reader = { language: 'de', units: 'metric', timeZone: 'UTC' } as const;
const german = textsFor(reader, de);

describe('the names of things', () => {
  it('title every shipped fat and liquid as its row does, and in German', () => {
    for (const { key, title } of [...shippedFats, ...shippedLiquids]) {
      expect(materials, key).toHaveProperty(key, title);
      expect(german.titled(key, title), key).not.toBe(title);
    }
  });

  it('say in German what every shipped fat does, in the reader’s degrees', () => {
    for (const { key, behaviour } of shippedFats) {
      expect(german.behaviourOf(key, behaviour), key).not.toBe(behaviour);
      const degrees = [...behaviour.matchAll(/\d+ °C/g)].map(String);
      expect([...german.behaviourOf(key, behaviour).matchAll(/\d+ °C/g)].map(String), key).toEqual(degrees);
    }
    expect(textsFor({ ...reader, language: 'en', units: 'us' }, en).behaviourOf('palm', 'below 40 °C')).toBe(
      'below 104 °F',
    );
  });

  it('leave alone what the maker titled', () => {
    expect(german.titled('olive', 'Olivenöl vom Nachbarn')).toBe('Olivenöl vom Nachbarn');
    expect(german.titled('house-blend', 'Olive oil')).toBe('Olive oil');
    expect(german.titled('olive', 'Olive oil')).toBe('Olivenöl');
    const english = textsFor({ ...reader, language: 'en' }, en);
    expect(english.titled('olive', 'Olive oil')).toBe('Olive oil');
    expect(english.titled('olive', 'Oil of a neighbour')).toBe('Oil of a neighbour');
  });

  it('cover every rule of the clocks', () => {
    expect([...rules.map(({ id }) => id), ...floorList().map(({ rule }) => rule), 'lesson']).toEqual([
      ...clockRuleIds,
    ]);
  });

  it('write what a clock read in the reader’s units', () => {
    expect(german.read('batterTemperatureC', 29)).toBe('29 °C');
    expect(textsFor({ ...reader, units: 'us' }, de).read('roomTemperatureC', 20)).toBe('68 °F');
    expect(german.read('lyeConcentrationPercent', 28.5)).toBe('28,5\u00a0%');
    expect(german.read('mould', 'lined-wood')).toBe('ausgelegtes Holz');
  });
});
