import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instantOf, isTimeZone, localText, openIntervals, quietAround, type WeeklyHours } from '#hours';
import { isoInstant, minute, parseIsoInstant, type Minute } from '#units';

const evenings: WeeklyHours = {
  weekly: {
    monday: [{ from: '18:30', to: '22:00' }],
    tuesday: [],
    wednesday: [],
    thursday: [],
    friday: [{ from: '18:30', to: '22:00' }],
    saturday: [{ from: '20:00', to: '24:00' }],
    sunday: [{ from: '00:00', to: '04:00' }],
  },
  exceptions: [{ date: '2026-11-30', spans: [] }],
};

function at(text: string): Minute {
  const found = parseIsoInstant(text);
  if (found === undefined) throw new Error(text);
  return found;
}

function iso(hours: WeeklyHours, zone: string, from: string, until: string): string[] {
  return openIntervals(hours, zone, at(from), at(until)).map(
    (i) => `${isoInstant(i.from)}/${isoInstant(i.to)}`,
  );
}

/** Clock changes of Ireland in 2026 from the IANA time zone database: forward on 29 March, back on 25 October, at 01:00Z. */
describe('open intervals', () => {
  it('turns local evenings into instants, with an exception that closes a day', () => {
    expect(iso(evenings, 'Europe/Dublin', '2026-11-27T12:00:00Z', '2026-12-01T00:00:00Z')).toEqual([
      '2026-11-27T18:30:00.000Z/2026-11-27T22:00:00.000Z',
      '2026-11-28T20:00:00.000Z/2026-11-29T04:00:00.000Z',
    ]);
  });

  it('gives a night in spring one hour less', () => {
    expect(iso(evenings, 'Europe/Dublin', '2026-03-28T12:00:00Z', '2026-03-29T12:00:00Z')).toEqual([
      '2026-03-28T20:00:00.000Z/2026-03-29T03:00:00.000Z',
    ]);
  });

  it('gives a night in autumn one hour more', () => {
    expect(iso(evenings, 'Europe/Dublin', '2026-10-24T12:00:00Z', '2026-10-25T12:00:00Z')).toEqual([
      '2026-10-24T19:00:00.000Z/2026-10-25T04:00:00.000Z',
    ]);
  });

  it('cuts to what was asked for', () => {
    expect(iso(evenings, 'Europe/Dublin', '2026-11-27T19:00:00Z', '2026-11-27T20:00:00Z')).toEqual([
      '2026-11-27T19:00:00.000Z/2026-11-27T20:00:00.000Z',
    ]);
  });

  it('is sorted and disjoint, whatever the spans', () => {
    const time = fc
      .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
      .map(([h, m]) => `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}`);
    const spans = fc.array(
      fc.tuple(time, time).map(([a, b]) => (a < b ? { from: a, to: b } : { from: b, to: a })),
      { maxLength: 4 },
    );
    fc.assert(
      fc.property(
        spans,
        fc.constantFrom('Europe/Dublin', 'America/New_York', 'Australia/Lord_Howe'),
        (day, zone) => {
          const weekly = { ...evenings.weekly, thursday: day, friday: day, saturday: day, sunday: day };
          const found = openIntervals(
            { weekly, exceptions: [] },
            zone,
            at('2026-10-20T00:00Z'),
            at('2026-11-05T00:00Z'),
          );
          found.forEach((interval, i) => {
            expect(interval.from).toBeLessThan(interval.to);
            const next = found[i + 1];
            if (next !== undefined) expect(interval.to).toBeLessThan(next.from);
          });
        },
      ),
    );
  });
});

describe('local time', () => {
  it('moves a skipped time on and takes the first of a repeated one', () => {
    expect(isoInstant(instantOf('2026-03-29T01:30', 'Europe/Dublin') ?? minute(0))).toBe(
      '2026-03-29T01:30:00.000Z',
    );
    expect(isoInstant(instantOf('2026-10-25T01:30', 'Europe/Dublin') ?? minute(0))).toBe(
      '2026-10-25T00:30:00.000Z',
    );
  });

  it('refuses what is no date or zone', () => {
    expect(instantOf('2026-02-30T10:00', 'Europe/Dublin')).toBeUndefined();
    expect(isTimeZone('Europe/Dublin')).toBe(true);
    expect(isTimeZone('Europe/Atlantis')).toBe(false);
  });

  it('reads the same on any machine', () => {
    expect(localText(at('2026-11-27T18:10:00Z'), 'Europe/Berlin')).toBe('Fri 27 Nov 19:10');
  });
});

describe('quiet hours', () => {
  const night = { from: '22:00', to: '07:00' };

  it('run over midnight, and over a clock change', () => {
    const around = quietAround(at('2026-10-25T03:00:00Z'), night, 'Europe/Dublin');
    expect(around && [isoInstant(around.from), isoInstant(around.to)]).toEqual([
      '2026-10-24T21:00:00.000Z',
      '2026-10-25T07:00:00.000Z',
    ]);
  });

  it('begin in the minute that they say, and end when they say', () => {
    expect(quietAround(at('2026-11-27T21:59:00Z'), night, 'Europe/Dublin')).toBeUndefined();
    expect(quietAround(at('2026-11-27T22:00:00Z'), night, 'Europe/Dublin')?.from).toBe(
      at('2026-11-27T22:00:00Z'),
    );
    expect(quietAround(at('2026-11-27T07:00:00Z'), night, 'Europe/Dublin')).toBeUndefined();
    expect(quietAround(at('2026-11-27T12:00:00Z'), undefined, 'Europe/Dublin')).toBeUndefined();
  });

  it('are none where they begin and end at one time', () => {
    const none = { from: '22:00', to: '22:00' };
    expect(quietAround(at('2026-11-27T23:00:00Z'), none, 'Europe/Dublin')).toBeUndefined();
  });
});
