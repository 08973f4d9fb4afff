import { describe, expect, it } from 'vitest';
import type { Reason } from '#contract';
import { en } from './en/index.js';
import { textsFor } from './index.js';
import { de } from './de/index.js';

const english = textsFor({ language: 'en', units: 'us', timeZone: 'UTC' }, en);
const german = textsFor({ language: 'de', units: 'metric', timeZone: 'UTC' }, de);

describe('what is told of the clocks', () => {
  const cool: Reason = {
    ...{ code: 'clock.reason', rule: 'batter-temperature', input: 'batterTemperatureC' },
    ...{ value: 29, usual: 38, factor: 1.72, evidence: { kind: 'from memory' } },
  };

  it('says which way a batch was pushed, in the reader’s units, without the factor', () => {
    expect(english.of(cool)).toBe('slower, because the batter is cool (84.2 °F)');
    expect(german.of(cool)).toBe('langsamer, weil der Leim kühl ist (29 °C)');
    expect(english.of({ ...cool, value: 45, factor: 0.6 })).toBe(
      'quicker, because the batter is warm (113 °F)',
    );
  });

  it('says of a floor what has to be waited for, and not that it slows', () => {
    const hot: Reason = { ...cool, rule: 'hot-soap', input: 'hotHours', value: 5.6, usual: 0, isFloor: true };
    expect(english.of(hot)).toBe('not sooner, because it has to cool first (about 6 h)');
    expect(german.of(hot)).toBe('nicht eher, weil sie erst abkühlen muss (etwa 6 h)');
    expect(english.of({ ...hot, value: 0.4 })).toBe('not sooner, because no soap is so in its first hour');
    const gel: Reason = { ...hot, rule: 'gel-cools', input: 'gelPercent', value: 90 };
    expect(english.of(gel)).toBe('not sooner, because soap in gel is a hot jelly for hours');
    expect(german.of(gel)).toBe('nicht eher, weil Seife in der Gelphase stundenlang heißes Gelee ist');
  });

  it('says what lies outside what is known, with what there is to know there', () => {
    const cold = {
      code: 'clock.beyond',
      rule: 'batter-temperature',
      input: 'batterTemperatureC',
      ...{ value: 25, from: 28, to: 58, factor: 1.8 },
      side: 'below',
    } as const;
    expect(english.of(cold)).toMatch(/77 °F.*82\.4 °F to 136\.4 °F.*Hard fats set/);
    expect(german.of({ ...cold, side: 'above', value: 60 })).toMatch(/60 °C liegt außerhalb.*unsicherer\.$/);
  });

  it.each([
    [1.18, 'lye concentration 30% instead of 33%: 18% longer', /: 18\u00a0% länger$/],
    [0.995, 'lye concentration 30% instead of 33%: under 1% shorter', /: unter 1\u00a0% kürzer$/],
    [4, 'lye concentration 30% instead of 33%: 4 times as long', /: 4-mal so lange$/],
  ])('says what a move by a factor of %d does', (factor, inEnglish, inGerman) => {
    const move = {
      code: 'clock.move',
      state: 'firm',
      input: 'lyeConcentrationPercent',
      ...{ from: 33, to: 30, factor },
    } as const;
    expect(english.of(move)).toBe(inEnglish);
    expect(german.of(move)).toMatch(inGerman);
  });
});
