import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localDays, nights, openStretches, snapped, wallTimes } from './local-days.js';

const at = (text: string): number => Date.parse(text);
const HOUR = 3_600_000;
/** Europe/Dublin changes its clock on 29 March and 25 October 2026, at 01:00 UTC (EU directive 2000/84/EC). */
const zone = 'Europe/Dublin';

describe('local days', () => {
  it('are 23 and 25 hours long when the clock changes', () => {
    const lengths = (from: string): number[] =>
      localDays({ from: at(from), to: at(from) + 40 * HOUR }, zone).map((day) => (day.to - day.from) / HOUR);
    expect(lengths('2026-03-28T12:00Z')).toEqual([24, 23, 24]);
    expect(lengths('2026-10-24T12:00Z')).toEqual([24, 25, 24]);
  });

  it('cover a stretch without gap or overlap, in any zone', () => {
    const zones = fc.constantFrom('Europe/Dublin', 'America/New_York', 'Asia/Kathmandu', 'Pacific/Apia');
    const start = fc.integer({ min: at('2024-01-01T00:00Z'), max: at('2027-12-31T00:00Z') });
    fc.assert(
      fc.property(zones, start, fc.integer({ min: 1, max: 40 * 24 }), (name, from, hours) => {
        const to = from + hours * HOUR;
        const days = localDays({ from, to }, name);
        expect(days[0]!.from).toBeLessThanOrEqual(from);
        expect(days.at(-1)!.to).toBeGreaterThanOrEqual(to);
        days.slice(1).forEach((day, i) => expect(day.from).toBe(days[i]!.to));
      }),
      { numRuns: 60 },
    );
  });
});

it('shades nights by the clock on the wall, cut to what is shown', () => {
  const stretch = { from: at('2026-10-24T23:00Z'), to: at('2026-10-26T12:00Z') };
  expect(nights(stretch, zone)).toEqual([
    { from: stretch.from, to: at('2026-10-25T06:00Z') },
    { from: at('2026-10-25T22:00Z'), to: at('2026-10-26T06:00Z') },
  ]);
});

it('opens the hours where the clock says so, before and after it changes', () => {
  const day = [{ from: '09:00', to: '10:00' }];
  const weekly = {
    monday: [],
    tuesday: [],
    wednesday: [],
    thursday: [],
    friday: [],
    saturday: day,
    sunday: day,
  };
  const stretch = { from: at('2026-10-24T00:00Z'), to: at('2026-10-26T00:00Z') };
  expect(openStretches({ weekly, exceptions: [] }, zone, stretch)).toEqual([
    { from: at('2026-10-24T08:00Z'), to: at('2026-10-24T09:00Z') },
    { from: at('2026-10-25T09:00Z'), to: at('2026-10-25T10:00Z') },
  ]);
});

describe('times on the wall', () => {
  const marks = (date: string): string[] =>
    wallTimes({ from: at(`${date}T00:00Z`) - HOUR, to: at(`${date}T05:00Z`) }, zone, 60).map((mark) =>
      new Date(mark).toISOString().slice(11, 16),
    );

  it('skip the hour that there is not', () => {
    // 00:00 UTC is 00:00 there; 01:00 there does not exist, 02:00 there is 01:00 UTC.
    expect(marks('2026-03-29')).toEqual(['23:00', '00:00', '01:00', '02:00', '03:00', '04:00']);
  });

  it('mark the hour that comes twice once', () => {
    // 01:00 there is 00:00 UTC and again 01:00 UTC; only the first is marked.
    expect(marks('2026-10-25')).toEqual(['23:00', '00:00', '02:00', '03:00', '04:00']);
  });
});

it('snaps to quarters of an hour', () => {
  expect(snapped(at('2026-11-27T18:08Z'), 15)).toBe(at('2026-11-27T18:15Z'));
  expect(snapped(at('2026-11-27T18:07Z'), 15)).toBe(at('2026-11-27T18:00Z'));
});
