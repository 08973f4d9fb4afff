import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { quietAround } from '#hours';
import { minuteOf } from '#units';
import { instantOf, isQuiet, isSameDay, wallClock } from './wall-clock.js';

const zones = ['Europe/Dublin', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'UTC'];
const zone = fc.constantFrom(...zones);
const instant = fc
  .integer({ min: Date.UTC(2024, 0), max: Date.UTC(2029, 0) })
  .map((at) => at - (at % 60_000));

/** Checked against luxon, a general library for local time. */
describe('what the clock on the wall shows', () => {
  it('is what luxon says', () => {
    fc.assert(
      fc.property(instant, zone, (at, name) => {
        const shown = DateTime.fromMillis(at, { zone: name }).toFormat("yyyy-MM-dd'T'HH:mm");
        expect(wallClock(at, name)).toBe(shown);
      }),
    );
  });

  it('leads back to an instant at which it is shown', () => {
    fc.assert(
      fc.property(instant, zone, (at, name) => {
        const back = instantOf(wallClock(at, name), name);
        expect(wallClock(back ?? 0, name)).toBe(wallClock(at, name));
        expect(back).toBeLessThanOrEqual(at);
        expect(at - (back ?? 0)).toBeLessThanOrEqual(60 * 60_000);
      }),
    );
  });

  it('takes the first of two, and an hour that is left out as after it', () => {
    // Ireland goes back on 25 October 2026 at 01:00Z and forward on 28 March 2027 at 01:00Z (IANA data base).
    expect(instantOf('2026-10-25T01:30', 'Europe/Dublin')).toBe(Date.parse('2026-10-25T00:30:00Z'));
    expect(instantOf('2027-03-28T01:30', 'Europe/Dublin')).toBe(Date.parse('2027-03-28T01:30:00Z'));
  });

  it('refuses what is no time', () => {
    expect(instantOf('', 'UTC')).toBeUndefined();
    expect(instantOf('2026-13-01T10:00', 'UTC')).toBeUndefined();
  });

  it('ends a day at its own midnight', () => {
    const late = Date.parse('2026-11-27T23:30:00Z');
    expect(isSameDay(late, late + 3_600_000, 'Europe/Dublin')).toBe(false);
    expect(isSameDay(late, late + 3_600_000, 'America/New_York')).toBe(true);
  });
});

describe('quiet hours', () => {
  it('are those of the planner', () => {
    const time = fc
      .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
      .map((parts) => parts.map((part) => String(part).padStart(2, '0')).join(':'));
    fc.assert(
      fc.property(instant, zone, time, time, (at, name, from, to) => {
        // In the hours in which a clock is changed the two may differ by that hour.
        const offsets = [-1, 1].map((d) => DateTime.fromMillis(at + d * 86_400_000, { zone: name }).offset);
        fc.pre(offsets[0] === offsets[1]);
        expect(isQuiet(at, { from, to }, name)).toBe(
          quietAround(minuteOf(at), { from, to }, name) !== undefined,
        );
      }),
    );
  });

  it('are none where there are none', () => {
    expect(isQuiet(0, undefined, 'UTC')).toBe(false);
  });
});
