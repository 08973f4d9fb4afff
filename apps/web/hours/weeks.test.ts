import { describe, expect, it } from 'vitest';
import { dateAfter, daysAhead } from './weeks.js';

const none = { monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] };
const hours = {
  weekly: { ...none, friday: [{ from: '18:00', to: '24:00' }], sunday: [{ from: '00:00', to: '12:00' }] },
  exceptions: [{ date: '2026-11-28', spans: [{ from: '06:00', to: '12:00' }] }],
  quiet: { from: '22:00', to: '06:00' },
};
const at = (text: string): number => Date.parse(text);

describe('the coming days', () => {
  it('have working hours, quiet hours, exceptions and sittings as shares of the day', () => {
    const sitting = {
      title: 'Tiles',
      startAt: at('2026-11-27T23:00:00Z'),
      endAt: at('2026-11-28T00:30:00Z'),
    };
    const days = daysAhead(hours, 'Europe/Dublin', at('2026-11-27T15:00:00Z'), [sitting], 2);
    expect(days.map(({ date, hours: length, isException }) => [date, length, isException])).toEqual([
      ['2026-11-27', 24, false],
      ['2026-11-28', 24, true],
    ]);
    const shares = (list: readonly { from: number; to: number }[] = []) =>
      list.map(({ from, to }) => [from, to]);
    expect(shares(days[0]?.open)).toEqual([[0.75, 1]]);
    expect(shares(days[1]?.open)).toEqual([[0.25, 0.5]]);
    expect(shares(days[0]?.quiet)).toEqual([
      [0, 0.25],
      [22 / 24, 1],
    ]);
    expect(shares(days[0]?.sittings)).toEqual([[23 / 24, 1]]);
    expect(shares(days[1]?.sittings)).toEqual([[0, 0.5 / 24]]);
  });

  /** Clock changes of Ireland in 2026 from the IANA time zone database: 29 March and 25 October, at 01:00Z. */
  it('are shorter and longer where the clocks change', () => {
    const [spring] = daysAhead(hours, 'Europe/Dublin', at('2026-03-29T10:00:00Z'), [], 1);
    const [autumn] = daysAhead(hours, 'Europe/Dublin', at('2026-10-25T10:00:00Z'), [], 1);
    expect([spring?.hours, autumn?.hours]).toEqual([23, 25]);
    // To noon it is 11 hours in spring and 13 in autumn.
    expect(spring?.open[0]?.to).toBeCloseTo(11 / 23, 12);
    expect(autumn?.open[0]?.to).toBeCloseTo(13 / 25, 12);
    // Quiet from midnight to six: 5 and 7 hours.
    expect(spring?.quiet[0]?.to).toBeCloseTo(5 / 23, 12);
    expect(autumn?.quiet[0]?.to).toBeCloseTo(7 / 25, 12);
  });

  it('begin with the local day, not with that of UTC', () => {
    const [first] = daysAhead(hours, 'Pacific/Auckland', at('2026-11-27T15:00:00Z'), [], 1);
    expect(first?.date).toBe('2026-11-28');
  });

  it('count over months and leap days', () => {
    expect(dateAfter('2028-02-28', 2)).toBe('2028-03-01');
    expect(dateAfter('2026-12-31', 1)).toBe('2027-01-01');
  });
});
