import { describe, expect, it } from 'vitest';
import { instantOf } from '#hours';
import { epochMs } from '#units';
import { asUtc, hoursBetween, later, localAt, nextHour } from './local-times.js';

describe('wall-clock times', () => {
  // The hours library reads them with luxon; this room writes them with Intl.
  it.each(['Europe/Dublin', 'America/St_Johns', 'Asia/Kathmandu', 'Pacific/Auckland'])(
    'come back from the hours library in %s',
    (zone) => {
      for (const local of ['2026-03-28T23:30', '2026-07-01T00:00', '2026-11-27T18:05', '2027-01-01T12:00']) {
        expect(localAt(epochMs(instantOf(local, zone)!), zone)).toBe(local);
      }
    },
  );

  it('are reckoned with on the wall', () => {
    expect(later('2026-10-24T18:00', 1440)).toBe('2026-10-25T18:00');
    expect(later('2026-11-27T00:30', -60)).toBe('2026-11-26T23:30');
    expect(hoursBetween('2026-10-24T18:00', later('2026-10-24T18:00', 31 * 60))).toBe(31);
    expect(nextHour('2026-11-27T18:00')).toBe('2026-11-27T18:00');
    expect(nextHour('2026-11-27T23:01')).toBe('2026-11-28T00:00');
    expect(asUtc('2026-11-27')).toBe(asUtc('2026-11-27T00:00'));
  });
});
