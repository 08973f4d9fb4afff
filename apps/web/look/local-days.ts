import { instantOf, localDateOf, openIntervals, type WeeklyHours } from '#hours';
import { minuteOf } from '#units';

/** A half-open stretch of time in milliseconds since 1970, [from, to). */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface LocalDay extends Stretch {
  /** `YYYY-MM-DD` */
  readonly date: string;
}

/** For the eye only, our own judgement: the sun keeps other hours in June than in December. */
const NIGHT = { from: '22:00', to: '06:00' } as const;
const MINUTE = 60_000;

/**
 * The local days that a stretch touches. A day on which the clock changes is 23 or 25 hours long.
 * @param zone IANA time zone
 */
export function localDays({ from, to }: Stretch, zone: string): LocalDay[] {
  const days: LocalDay[] = [];
  for (let date = dateAt(from, zone); days.length === 0 || days.at(-1)!.to < to; date = dayAfter(date)) {
    days.push({ date, from: at(date, '00:00', zone), to: at(dayAfter(date), '00:00', zone) });
  }
  return days;
}

/** The nights that a stretch touches, cut to it. */
export function nights(stretch: Stretch, zone: string): Stretch[] {
  const before = { from: stretch.from - 24 * 60 * MINUTE, to: stretch.to };
  return localDays(before, zone).flatMap(({ date }) =>
    cut({ from: at(date, NIGHT.from, zone), to: at(dayAfter(date), NIGHT.to, zone) }, stretch),
  );
}

/** When the maker can be at the bench. @param zone of the workshop, in which the hours are stated */
export function openStretches(hours: WeeklyHours, zone: string, { from, to }: Stretch): Stretch[] {
  return openIntervals(hours, zone, minuteOf(from), minuteOf(to)).map((open) => ({
    from: open.from * MINUTE,
    to: open.to * MINUTE,
  }));
}

/**
 * Times on the clock on the wall, every so many minutes from midnight on, each once: an hour that comes twice is
 * marked at its first coming, and one that is skipped is not marked.
 * @param stepMin divides a day
 */
export function wallTimes(stretch: Stretch, zone: string, stepMin: number): number[] {
  const marks = localDays(stretch, zone).flatMap((day) =>
    Array.from({ length: 1440 / stepMin }, (_, i) => {
      const [hour, min] = [Math.floor((i * stepMin) / 60), (i * stepMin) % 60];
      return at(day.date, `${two(hour)}:${two(min)}`, zone);
    }),
  );
  return [...new Set(marks)]
    .filter((mark) => mark >= stretch.from && mark < stretch.to)
    .sort((a, b) => a - b);
}

/** The nearest full step of the clock on the wall. */
export function snapped(instant: number, stepMin: number): number {
  // Zones lie whole quarters of an hour apart, so what is round in UTC is round on the wall too.
  return Math.round(instant / (stepMin * MINUTE)) * stepMin * MINUTE;
}

function cut(stretch: Stretch, to: Stretch): Stretch[] {
  const both = { from: Math.max(stretch.from, to.from), to: Math.min(stretch.to, to.to) };
  return both.from < both.to ? [both] : [];
}

function at(date: string, time: string, zone: string): number {
  const instant = instantOf(`${date}T${time}`, zone);
  if (instant === undefined) throw new Error(`${date} ${time} is no time in ${zone}`);
  return instant * MINUTE;
}

function dateAt(instant: number, zone: string): string {
  return localDateOf(minuteOf(instant), zone);
}

function dayAfter(date: string): string {
  return new Date(Date.parse(`${date}T00:00Z`) + 24 * 60 * MINUTE).toISOString().slice(0, 10);
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
