/** How dates and times are written: in the reader's language and time zone, through Intl. */
export interface Times {
  /** `Fri 27 Nov, 18:10` */
  readonly dayTime: (at: string | number) => string;
  /** `18:10` */
  readonly time: (at: string | number) => string;
  /** `18:10` where it is the same local day as `from`, else with the day. */
  readonly timeFrom: (from: string | number, at: string | number) => string;
  /** `Fri 27 Nov` */
  readonly day: (at: string | number) => string;
  /** `27 November 2026` */
  readonly date: (at: string | number) => string;
  /** A local date, `2026-11-27`, as `Fri 27 Nov`; it is the same day in every zone. */
  readonly calendarDay: (date: string) => string;
}

const made = new Map<string, Times>();

/**
 * Times in a locale and zone; an instant is ISO text or milliseconds since 1970. Formatters cost milliseconds to
 * make, so those of a locale and zone are made once.
 * @throws RangeError where there is no such zone
 */
export function timesIn(locale: string, timeZone: string): Times {
  const key = `${locale} ${timeZone}`;
  let times = made.get(key);
  if (times === undefined) made.set(key, (times = makeTimes(locale, timeZone)));
  return times;
}

function makeTimes(locale: string, timeZone: string): Times {
  const format = (
    options: Intl.DateTimeFormatOptions,
    zone = timeZone,
  ): ((at: string | number) => string) => {
    const formatter = new Intl.DateTimeFormat(locale, { timeZone: zone, ...options });
    return (at) => formatter.format(new Date(at));
  };
  const day = { weekday: 'short', day: 'numeric', month: 'short' } as const;
  const time = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;
  const [dayTime, timeAlone, date] = [
    format({ ...day, ...time }),
    format(time),
    format({ dateStyle: 'long' }),
  ];
  return {
    dayTime,
    time: timeAlone,
    timeFrom: (from, at) => (date(from) === date(at) ? timeAlone(at) : dayTime(at)),
    day: format(day),
    date,
    calendarDay: format(day, 'UTC'),
  };
}
