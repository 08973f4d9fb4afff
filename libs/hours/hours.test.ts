import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  instantOf,
  isTimeZone,
  localDateOf,
  localText,
  localTimeOf,
  openIntervals,
  quietAround,
  type DaySpan,
  type OpenInterval,
  type WeeklyHours,
} from '#hours';
import { isoInstant, minute, parseIsoInstant, type Minute } from '#units';

fc.configureGlobal({ seed: 1916 });

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

const noHours: WeeklyHours['weekly'] = {
  ...{ monday: [], tuesday: [], wednesday: [], thursday: [], friday: [], saturday: [], sunday: [] },
};

/** A time of day, from 00:00 to 24:00. */
function timeAt(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return `${String(hours).padStart(2, '0')}:${String(rest).padStart(2, '0')}`;
}

/** Spans in any order, that may touch, overlap or be empty. */
const anySpans: fc.Arbitrary<DaySpan[]> = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 1440 }), fc.integer({ min: 0, max: 1440 }))
    .map(([a, b]) => ({ from: timeAt(Math.min(a, b)), to: timeAt(Math.max(a, b)) })),
  { maxLength: 4 },
);

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
    fc.assert(
      fc.property(
        anySpans,
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
      { numRuns: 30 },
    );
  });

  /** Reference: the definition, minute by minute, in India, whose clock has not changed since 1945. */
  it('is open in the minutes of its spans and in no other', () => {
    const midnight = at('2026-11-26T00:00+05:30');
    const minutesOfDay = Array.from({ length: 1440 }, (_, now) => [timeAt(now), now] as const);
    fc.assert(
      fc.property(anySpans, (thursday) => {
        const hours = { weekly: { ...noHours, thursday }, exceptions: [] };
        const found = openIntervals(hours, 'Asia/Kolkata', at('2026-11-24T00:00Z'), at('2026-11-28T00:00Z'));
        const wrong = minutesOfDay.filter(([time, now]) => {
          const isOpen = found.some(({ from, to }) => from <= midnight + now && midnight + now < to);
          return isOpen !== thursday.some(({ from, to }) => from <= time && time < to);
        });
        expect(wrong).toEqual([]);
        expect(found.every(({ from, to }) => from >= midnight && to <= midnight + 1440)).toBe(true);
      }),
    );
  });

  /**
   * Greenland's clock goes forward at 23:00 of the last Saturday of March, Egypt's at 00:00 of the last Friday of April
   * (IANA time zone database), so the night in which they do is cut at every half hour.
   */
  it.each([
    ['Europe/Dublin', '2026-03-28T12:00Z'],
    ['Europe/Dublin', '2026-10-24T12:00Z'],
    ['America/Nuuk', '2026-03-28T12:00Z'],
    ['Africa/Cairo', '2026-04-23T12:00Z'],
  ])('tells the same of a moment however much is asked for: %s, %s', (zone, start) => {
    const [from, until] = [at(start), minute(at(start) + 1440)];
    const day = [
      { from: '06:00', to: '23:30' },
      { from: '00:15', to: '01:30' },
    ];
    const weekly = { ...noHours, thursday: day, friday: day, saturday: day, sunday: day };
    const asked = (a: number, b: number): OpenInterval[] =>
      openIntervals({ weekly, exceptions: [] }, zone, minute(a), minute(b));
    const whole = asked(from, until);
    for (let cut = from + 30; cut < until; cut += 30) {
      const before = whole.flatMap((i) => (i.from < cut ? [{ ...i, to: Math.min(i.to, cut) }] : []));
      const after = whole.flatMap((i) => (i.to > cut ? [{ ...i, from: Math.max(i.from, cut) }] : []));
      expect(asked(from, cut)).toEqual(before);
      expect(asked(cut, until)).toEqual(after);
    }
  });

  /** In the night to Sunday 1 November 2026 Cuba's clock goes from 01:00 back to 00:00, so that midnight comes twice. */
  it('ends a day at the first midnight where the clock shows two', () => {
    const weekly = { ...noHours, saturday: [{ from: '22:00', to: '24:00' }] };
    expect(
      iso({ weekly, exceptions: [] }, 'America/Havana', '2026-10-31T12:00:00Z', '2026-11-01T12:00:00Z'),
    ).toEqual(['2026-11-01T02:00:00.000Z/2026-11-01T04:00:00.000Z']);
  });

  /** On Friday 24 April 2026 Egypt's clock goes from 00:00 to 01:00, on to UTC+3. */
  it('counts the day after one that has no midnight from its own midnight', () => {
    const weekly = {
      ...noHours,
      friday: [{ from: '20:00', to: '24:00' }],
      saturday: [{ from: '10:00', to: '11:00' }],
    };
    const hours = { weekly, exceptions: [] };
    expect(iso(hours, 'Africa/Cairo', '2026-04-23T12:00:00Z', '2026-04-25T12:00:00Z')).toEqual([
      '2026-04-24T17:00:00.000Z/2026-04-24T21:00:00.000Z',
      '2026-04-25T07:00:00.000Z/2026-04-25T08:00:00.000Z',
    ]);
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
    expect(instantOf('2026-11-27T10:00', 'Europe/Atlantis')).toBeUndefined();
    expect(isTimeZone('Europe/Dublin')).toBe(true);
    expect(isTimeZone('Europe/Atlantis')).toBe(false);
  });

  it('has a day begin at its local midnight', () => {
    expect(instantOf('2026-11-27', 'Europe/Berlin')).toBe(at('2026-11-26T23:00Z'));
  });

  it('tells the date and the time on the clock there, which may be those of tomorrow', () => {
    expect(localDateOf(at('2026-07-01T23:05Z'), 'Europe/Dublin')).toBe('2026-07-02');
    expect(localTimeOf(at('2026-07-01T23:05Z'), 'Europe/Dublin')).toBe('00:05');
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

  it('may lie within a day, and are over by its end', () => {
    const nap = { from: '13:00', to: '14:30' };
    const noon = quietAround(at('2026-11-27T13:00:00Z'), nap, 'Europe/Dublin');
    expect(noon).toEqual({ from: at('2026-11-27T13:00Z'), to: at('2026-11-27T14:30Z') });
    for (const time of ['12:59', '14:30', '23:00']) {
      expect(quietAround(at(`2026-11-27T${time}:00Z`), nap, 'Europe/Dublin'), time).toBeUndefined();
    }
    const late = { from: '22:00', to: '24:00' };
    expect(quietAround(at('2026-11-27T23:59:00Z'), late, 'Europe/Dublin')?.to).toBe(at('2026-11-28T00:00Z'));
    expect(quietAround(at('2026-11-28T00:00:00Z'), late, 'Europe/Dublin')).toBeUndefined();
  });
});
