import { describe, expect, it } from 'vitest';
import { dayNumber, lotStatus } from './lot-status.js';

const ready = { low: '2027-01-02T10:00:00Z', likely: '2027-01-08T22:30:00Z', high: '2027-01-15T10:00:00Z' };
const at = (instant: string, timeZone = 'Europe/Dublin') => lotStatus(ready, Date.parse(instant), timeZone);

describe('how far a lot has come', () => {
  it('goes by its band', () => {
    expect(at('2027-01-02T09:59:59Z').stage).toBe('curing');
    expect(at('2027-01-02T10:00:00Z').stage).toBe('perhaps');
    expect(at('2027-01-08T22:30:00Z').stage).toBe('likely');
    expect(at('2027-01-15T10:00:00Z').stage).toBe('ready');
  });

  it('counts days on the calendar of the place, not stretches of 24 hours', () => {
    expect(at('2027-01-08T00:10:00Z').days).toBe(0);
    expect(at('2027-01-07T23:50:00Z').days).toBe(1);
    expect(at('2027-01-09T00:10:00Z').days).toBe(-1);
    // In Berlin it is the 9th by then.
    expect(at('2027-01-08T12:00:00Z', 'Europe/Berlin').days).toBe(0);
    expect(at('2027-01-08T12:00:00Z', 'Pacific/Auckland').days).toBe(0);
    expect(at('2027-01-08T10:00:00Z', 'Pacific/Auckland').days).toBe(1);
  });

  it('counts a day of 23 hours as one', () => {
    // Clocks in Dublin go forward on 28 March 2027.
    const days = ['2027-03-27T23:30:00Z', '2027-03-28T22:30:00Z', '2027-03-28T23:30:00Z'].map((instant) =>
      dayNumber(Date.parse(instant), 'Europe/Dublin'),
    );
    expect(days.map((day) => day - (days[0] ?? 0))).toEqual([0, 1, 2]);
  });
});
