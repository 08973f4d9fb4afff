import { describe, expect, it } from 'vitest';
import { en } from './en/index.js';
import { textsFor, withTexts } from './index.js';
import { de } from './de/index.js';

const english = textsFor({ language: 'en', units: 'us', timeZone: 'UTC' }, en);
const german = textsFor({ language: 'de', units: 'metric', timeZone: 'UTC' }, de);

describe('risks in words', () => {
  it('say what may go wrong and what would help', () => {
    const limit = {
      code: 'fragrance.over-limit',
      fragrance: 'Sea air',
      level: 'high',
      ...{ sharePercent: 4.26, limitPercent: 3, allowedPercent: 2.4 },
    } as const;
    expect(german.of(limit)).toBe(
      '„Sea air“ macht bis zu 4,3\u00a0% der trockenen Seife aus. Der Lieferant erlaubt 3\u00a0%.',
    );
    expect(german.remedyOf(limit)).toBe('Höchstens 2,4\u00a0% der Fette nehmen.');
    const told = withTexts(limit, { language: 'en', units: 'us', timeZone: 'UTC' }, en);
    expect(told).toHaveProperty('text', expect.stringMatching(/supplier allows 3%\.$/));
    expect(told).toHaveProperty('remedy', 'Use at most 2.4% of the fats.');
  });

  it('hold no metric figure for who wants US units', () => {
    const sugar = { code: 'sugar.heats', level: 'medium', percent: 3, belowC: 40 } as const;
    expect(english.remedyOf(sugar)).toContain('below 104 °F');
    const ash = {
      code: 'soap.ash',
      level: 'medium',
      signs: [{ sign: 'wet-batter', value: 28 }, { sign: 'no-gel' }, { sign: 'cool-batter', value: 29 }],
    } as const;
    expect(english.of({ ...ash, signs: [...ash.signs] })).toBe(
      'White ash may show on open faces in the first days: wet batter (lye of 28%), no gel and cool batter (84.2 °F).',
    );
    const small = { code: 'batch.small', level: 'medium', gramPercent: 3.2, scalesG: 0.1 } as const;
    expect(`${english.of(small)} ${english.remedyOf(small)}`).not.toMatch(/\d g\b/);
  });

  it('call a shipped fat by its German name, and the maker’s own by its title', () => {
    const cool = { code: 'batter.too-cool', level: 'high', batterTemperatureC: 40, enoughC: 60 } as const;
    const fats = [
      { fat: 'beeswax', title: 'Beeswax' },
      { fat: 'hive', title: 'Wachs vom Dachboden' },
    ];
    expect(german.of({ ...cool, fats })).toMatch(/^Bienenwachs und Wachs vom Dachboden: .*40 °C fest/);
  });

  it('are part of what is said of amounts', () => {
    expect(german.of({ code: 'use.coat', areaCm2: 40, thicknessMm: 2.5 })).toBe(
      'ein Überzug von 40 cm², 2,5 mm dick',
    );
    expect(english.of({ code: 'use.coat', areaCm2: 40, thicknessMm: 2.5 })).toBe(
      'a coat of 6.2 in², 0.1 in thick',
    );
    expect(english.of({ code: 'leftover.fill', mould: 'Pebbles', cavities: 1 })).toBe(
      'fill a cavity of “Pebbles”',
    );
  });
});
