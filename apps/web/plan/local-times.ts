/**
 * Wall-clock times as the API writes them, `2026-11-27T18:00`. They are reckoned with as if in UTC: what is added are
 * hours on the wall, and a slider over days does not stumble where summer time ends.
 */
export type LocalTime = string;

const formats = new Map<string, Intl.DateTimeFormat>();

/** What the clock on the wall of a zone shows. @param at milliseconds since 1970 */
export function localAt(at: number, timeZone: string): LocalTime {
  let format = formats.get(timeZone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-GB', {
      timeZone,
      ...{ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' },
      hourCycle: 'h23',
    });
    formats.set(timeZone, format);
  }
  const parts = new Map(format.formatToParts(at).map(({ type, value }) => [type, value]));
  const get = (type: Intl.DateTimeFormatPartTypes): string => parts.get(type) ?? '';
  return `${get('year')}-${get('month')}-${get('day')}T${get('hour')}:${get('minute')}`;
}

/** The same as an instant of UTC, for formatters that are told so. */
export function asUtc(local: LocalTime): number {
  return Date.parse(`${local.length === 10 ? `${local}T00:00` : local}:00Z`);
}

/** So many minutes on the wall later; earlier where they are below 0. */
export function later(local: LocalTime, minutes: number): LocalTime {
  return new Date(asUtc(local) + minutes * 60_000).toISOString().slice(0, 16);
}

/** Whole hours on the wall from one to the other. */
export function hoursBetween(from: LocalTime, to: LocalTime): number {
  return Math.round((asUtc(to) - asUtc(from)) / 3_600_000);
}

/** The next full hour. */
export function nextHour(local: LocalTime): LocalTime {
  return local.endsWith(':00') ? local : later(`${local.slice(0, 13)}:00`, 60);
}
