import { describe, expect, it } from 'vitest';
import type { Message } from '#contract';
import { en } from './en/index.js';
import { textsFor } from './index.js';
import { de } from './de/index.js';

const english = textsFor({ language: 'en', units: 'us', timeZone: 'Europe/Dublin' }, en);
const german = textsFor({ language: 'de', units: 'metric', timeZone: 'Europe/Dublin' }, de);

const stage = (title: string, attempt = 1) => ({ run: 'cups', stage: 'any', attempt, title });
const part = { run: 'cups', part: 'over', attempt: 2, title: 'Upper layer' };
const band = { low: 1380, likely: 2160, high: 3420 };

describe('why a stage lies where it does', () => {
  const opens: Message = {
    ...{ code: 'why.opens', part, state: 'firm', band },
    influences: [
      { input: 'batterTemperatureC', value: 29, usual: 38, factor: 1.72 },
      { input: 'sodiumLactatePercent', value: 2.5, usual: 0, factor: 0.64 },
    ],
  };

  it('says which way a thing pushed, in the units of the reader, and no factor', () => {
    expect(english.of(opens)).toBe(
      '“Upper layer” (attempt 2) is firm enough to unmould 36 h (23 h to 57 h) after the end of the pour: ' +
        'slower, because the batter is cool (84.2 °F); faster, because there is sodium lactate in it (2.5%).',
    );
    expect(german.of(opens)).toBe(
      '„Upper layer“ (2. Versuch) ist 36 h (23 h bis 57 h) nach dem Gießen fest genug zum Ausformen: ' +
        'langsamer, weil der Leim kühl ist (29 °C); schneller, weil Natriumlaktat darin ist (2,5\u00a0%).',
    );
  });

  it('tells the floor that holds a time up apart from what pushes it', () => {
    const held: Message = {
      ...opens,
      influences: [
        { input: 'hotHours', value: 6, usual: 0, factor: 16.3, isFloor: true },
        { input: 'saltPercent', value: 100, usual: 0, factor: 0.08 },
      ],
    };
    expect(english.of(held)).toMatch(
      /: faster, because there is salt in it \(100%\); not sooner, because it has to cool first \(about 6 h\)\.$/,
    );
    expect(german.of(held)).toMatch(/; nicht eher, weil sie erst abkühlen muss \(etwa 6 h\)\.$/);
  });
});

describe('a stage that is held by the soonest that it was ever done', () => {
  const held: Message = { code: 'why.soonest-done', part, state: 'firm', minutes: 2880 };

  it('says so, and what makes the forecast better', () => {
    expect(english.of(held)).toBe(
      '“Upper layer” (attempt 2): not sooner than you have ever done it, 48 h after the end of the pour. ' +
        'You have never logged a look that was too early; log one, and the forecast gets better.',
    );
    expect(german.of(held)).toBe(
      '„Upper layer“ (2. Versuch): nicht früher, als Sie es je getan haben, 48 h nach dem Gießen. ' +
        'Sie haben noch nie einen Blick eingetragen, der zu früh war; tragen Sie einen ein, dann wird die Vorhersage besser.',
    );
  });
});

describe('a stretch in which something can start', () => {
  const between = (from: string, to: string | null): string =>
    english.of({ code: 'relaxation.hours', stage: stage('Unmould'), minutes: 10, from, to });
  it.each([
    ['2026-12-01T02:10:00Z', '2026-12-01T06:40:00Z', 'Tue 1 Dec, 02:10 to 06:40'],
    ['2026-12-01T22:10:00Z', '2026-12-02T06:40:00Z', 'Tue 1 Dec, 22:10 to Wed 2 Dec, 06:40'],
    ['2026-12-01T22:10:00Z', '2026-12-01T22:10:00Z', 'Tue 1 Dec, 22:10 only'],
    ['2026-12-01T22:10:00Z', null, 'from Tue 1 Dec, 22:10 on'],
    // Ireland's clocks go back at 02:00 on 25 October 2026 (IANA time zone database): 01:30 comes twice.
    ['2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z', 'Sun 25 Oct, 01:30 to Sun 25 Oct, 01:30'],
  ])('from %s to %s', (from, to, text) => {
    expect(between(from, to)).toBe(`Be at the bench for “Unmould” (10 min), ${text}.`);
  });
});

describe('what a plan is lost at', () => {
  it('is told with the time by which it may be too late', () => {
    const lost: Message = {
      ...{ code: 'loss.closed', stage: stage('Patch'), part: { ...part, attempt: 1 } },
      ...{ state: 'pliable-until', at: '2026-11-29T09:47:00Z' },
    };
    expect(english.of(lost)).toBe(
      'By Sun 29 Nov, 09:47, “Upper layer” may no longer be soft enough to patch.',
    );
    expect(english.of({ ...lost, at: null })).toContain('When it is time for “Patch”');
    expect(german.of(lost)).toContain('ist „Upper layer“ vielleicht nicht mehr weich genug zum Ausbessern');
  });
});

describe('what an entry did', () => {
  it('counts what moves and what stays', () => {
    const moves = { added: 0, removed: 0, later: 1, earlier: 0, stay: 3 };
    expect(english.of({ code: 'effect.moves', ...moves })).toBe(
      'Of the stages, 1 moves later; 3 stay where they were.',
    );
    expect(german.of({ code: 'effect.moves', ...moves, later: 2, stay: 0 })).toBe(
      'Von den Schritten: 2 rücken nach hinten.',
    );
  });

  it('stands as the cause of the plan that it made', () => {
    const what: Message = {
      code: 'logged.done',
      stage: { stage: 'pour-deep', title: 'Pour the deep layer' },
    };
    expect(english.of({ code: 'cause.logged', entry: null, what })).toBe(
      'Logged: “Pour the deep layer” is done.',
    );
    expect(german.of({ code: 'cause.logged', entry: null, what: null })).toBe('Eingetragen: etwas.');
  });

  it('has no metric figure in US units', () => {
    const weighed: Message = {
      ...{ code: 'logged.weighed', part: { part: 'over', title: 'Upper layer' } },
      ...{ pieces: 1, usedG: 52 },
    };
    expect(english.of(weighed)).toBe(
      '1 piece took 1.83 oz of “Upper layer”. Batches are sized with that now.',
    );
  });
});

describe('what cannot all hold', () => {
  it('names what there is too little of by its title', () => {
    const resource = { kind: 'mould', key: 'cup', title: 'Round cups' } as const;
    const tooFew: Message = {
      ...{ code: 'conflict.too-few', stage: stage('Pour'), resource },
      ...{ needed: 500, owned: 12 },
    };
    expect(english.of(tooFew)).toBe(
      '“Pour” needs 500 cavities of “Round cups” at once; there are 12. ' +
        'Make fewer pieces, or two runs one after the other.',
    );
    expect(german.of({ code: 'relaxation.owned', resource, count: 24, insteadOf: 12 })).toBe(
      '24 Mulden von „Round cups“ haben statt 12.',
    );
  });
});
