import { useEffect, useState } from 'react';
import { timesIn, type Times as TimesOfReader } from '#words';
import { serverNow } from '../api/server-time.js';
import { useTimeZone } from '../session/session.js';
import { useLanguage, type Language } from '../words/words.js';

/** How dates and times are written here: in the person's language and time zone, through Intl. */
export interface Times extends TimesOfReader {
  /** `1 h 05`, `3 d 4 h`, `12 min` */
  readonly length: (minutes: number) => string;
}

const locales: Record<Language, string> = { en: 'en-GB', de: 'de-DE' };

export function useTimes(): Times {
  return timesFor(useLanguage(), useTimeZone());
}

/** Times in a language and zone, with lengths as a clock would show them. */
export function timesFor(language: Language, timeZone: string): Times {
  return { ...timesIn(locales[language], timeZone), length: lengthText };
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
