import { useEffect, useState } from 'react';
import { serverNow } from '../api/server-time.js';
import { useTimeZone } from '../session/session.js';
import { useLanguage, type Language } from '../words/words.js';

/** How dates and times are written here: in the person's language and time zone, through Intl. */
export interface Times {
  /** `Fri 27 Nov, 18:10` */
  readonly dayTime: (at: string | number) => string;
  /** `18:10` */
  readonly time: (at: string | number) => string;
  /** `Fri 27 Nov` */
  readonly day: (at: string | number) => string;
  /** `27 November 2026` */
  readonly date: (at: string | number) => string;
  /** `1 h 05`, `3 d 4 h`, `12 min` */
  readonly length: (minutes: number) => string;
}

const locales: Record<Language, string> = { en: 'en-GB', de: 'de-DE' };

export function useTimes(): Times {
  const language = useLanguage();
  const timeZone = useTimeZone();
  return timesIn(locales[language], timeZone);
}

const made = new Map<string, Times>();

/** Formatters cost milliseconds to make, so those of a language and zone are made once. */
export function timesIn(locale: string, timeZone: string): Times {
  const key = `${locale} ${timeZone}`;
  let times = made.get(key);
  if (times === undefined) made.set(key, (times = makeTimes(locale, timeZone)));
  return times;
}

function makeTimes(locale: string, timeZone: string): Times {
  const format = (options: Intl.DateTimeFormatOptions): ((at: string | number) => string) => {
    const formatter = new Intl.DateTimeFormat(locale, { timeZone, ...options });
    return (at) => formatter.format(new Date(at));
  };
  const day = { weekday: 'short', day: 'numeric', month: 'short' } as const;
  const time = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;
  return {
    dayTime: format({ ...day, ...time }),
    time: format(time),
    day: format(day),
    date: format({ dateStyle: 'long' }),
    length: lengthText,
  };
}

function lengthText(minutes: number): string {
  const whole = Math.round(minutes);
  const [days, hours, rest] = [Math.floor(whole / 1440), Math.floor(whole / 60) % 24, whole % 60];
  if (days > 0) return hours === 0 ? `${days} d` : `${days} d ${hours} h`;
  if (hours > 0) return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`;
  return `${rest} min`;
}

/** The present by the server's clock, in milliseconds; renews itself. */
export function useNow(everyMs: number): number {
  const [now, setNow] = useState(serverNow);
  useEffect(() => {
    const timer = setInterval(() => setNow(serverNow()), everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return now;
}
