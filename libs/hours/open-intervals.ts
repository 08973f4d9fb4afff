import { DateTime } from 'luxon';
import { minute, type Minute } from '#units';
import { timeOnDay } from './local-time.js';

/** A stretch of one local day; `24:00` ends it with the day. */
export interface DaySpan {
  readonly from: string;
  readonly to: string;
}

export type WeekDay = (typeof weekDays)[number];
export const weekDays = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;

/** Weekly hours, with days that differ. */
export interface WeeklyHours {
  readonly weekly: Readonly<Record<WeekDay, readonly DaySpan[]>>;
  readonly exceptions: readonly { readonly date: string; readonly spans: readonly DaySpan[] }[];
}

/** A half-open stretch of time, [from, to), in minutes since 1970. */
export interface OpenInterval {
  readonly from: Minute;
  readonly to: Minute;
}

/**
 * When the maker can be at the bench between two instants.
 * Local spans become instants day by day, so a night on which the clock changes makes a span longer or
 * shorter by what really passes. Spans that touch or overlap are joined, also over midnight.
 * @returns sorted, disjoint intervals, cut to [from, until)
 */
export function openIntervals(hours: WeeklyHours, zone: string, from: Minute, until: Minute): OpenInterval[] {
  const exceptions = new Map(hours.exceptions.map((day) => [day.date, day.spans]));
  const intervals: OpenInterval[] = [];
  let day = DateTime.fromMillis(from * 60_000, { zone })
    .startOf('day')
    .minus({ days: 1 });
  while (day.toMillis() < until * 60_000) {
    const next = day.plus({ days: 1 }).startOf('day');
    const weekDay = weekDays[day.weekday - 1] as WeekDay;
    const other = exceptions.size === 0 ? undefined : exceptions.get(day.toISODate() ?? '');
    const instantOn = timesOf(day, next);
    for (const span of other ?? hours.weekly[weekDay]) {
      const start = Math.max(instantOn(span.from), from);
      const end = Math.min(instantOn(span.to), until);
      if (start < end) intervals.push({ from: minute(start), to: minute(end) });
    }
    day = next;
  }
  return joined(intervals);
}

/** The instant of a time of day. On a day of 24 hours no clock changes, and counting from midnight is quicker. */
function timesOf(day: DateTime, next: DateTime): (time: string) => number {
  if (next.toMillis() - day.toMillis() !== 86_400_000) return (time) => timeOnDay(day, time);
  const midnight = day.toMillis() / 60_000;
  return (time) => midnight + 60 * Number(time.slice(0, 2)) + Number(time.slice(3));
}

function joined(intervals: OpenInterval[]): OpenInterval[] {
  const sorted = [...intervals].sort((a, b) => a.from - b.from);
  const result: OpenInterval[] = [];
  for (const interval of sorted) {
    const last = result.at(-1);
    if (last === undefined || interval.from > last.to) result.push(interval);
    else result[result.length - 1] = { from: last.from, to: minute(Math.max(last.to, interval.to)) };
  }
  return result;
}
