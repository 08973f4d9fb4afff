import { describe, expect, it } from 'vitest';
import { en } from './en/index.js';
import { textsFor } from './index.js';
import { de } from './de/index.js';

const english = textsFor({ language: 'en', units: 'metric', timeZone: 'Europe/Dublin' }, en);
const german = textsFor({ language: 'de', units: 'us', timeZone: 'Europe/Berlin' }, de);
const times = { stage: 'Unmould', startAt: '2026-11-27T18:10:00.000Z', saidAt: '2026-11-27T19:00:00.000Z' };

describe('nudges in words', () => {
  it('give the time alone on the same day, in the reader’s zone', () => {
    const late = { code: 'nudge.was-planned', ...times, lastCallAt: '2026-11-27T20:45:00.000Z' } as const;
    expect(english.of(late)).toBe('Unmould was planned for 18:10. Last call at 20:45.');
    expect(german.of(late)).toBe('Unmould war für 19:10 geplant. Letzte Gelegenheit 21:45.');
  });

  it('give the day where it is another', () => {
    const planned = { code: 'nudge.planned', ...times, lastCallAt: null } as const;
    expect(english.of({ ...planned, startAt: '2026-11-28T06:00:00.000Z' })).toBe(
      'Unmould: planned for Sat 28 Nov, 06:00.',
    );
    // 23:30 UTC is the next day in Berlin.
    expect(german.of({ ...planned, startAt: '2026-11-27T23:30:00.000Z' })).toContain('28. Nov');
  });
});
