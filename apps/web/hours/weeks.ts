import { instantOf, localDateOf, openIntervals, type DaySpan, type WeeklyHours } from '#hours';
import { minute, type Minute } from '#units';

/** Part of a day, as shares of its length from its start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Milliseconds since 1970. */
  readonly fromAt: number;
  readonly toAt: number;
}

export interface Sitting {
  readonly title: string;
  readonly startAt: number;
  readonly endAt: number;
}

/** A local day with what is in it. */
export interface Day {
  readonly date: string;
  readonly startAt: number;
  /** 23, 24 or 25 as a rule: the clocks may change on it. */
  readonly hours: number;
  readonly open: readonly Stretch[];
  readonly quiet: readonly Stretch[];
  readonly sittings: readonly (Stretch & { readonly title: string })[];
  readonly isException: boolean;
}

/**
 * The coming days: when the maker is at the bench, when nobody may disturb, and what is planned.
 * @param now milliseconds since 1970; the first day is the one it falls on
 */
export function daysAhead(
  hours: WeeklyHours & { readonly quiet?: DaySpan | undefined },
  zone: string,
  now: number,
  sittings: readonly Sitting[],
  count: number,
): Day[] {
  const today = localDateOf(minute(Math.floor(now / 60_000)), zone);
  return Array.from({ length: count }, (_, i) => {
    const date = dateAfter(today, i);
    const [start, end] = [startOf(date, zone), startOf(dateAfter(date, 1), zone)];
    const part = (from: number, to: number): Stretch => {
      const [a, b] = [Math.max(from, start), Math.min(to, end)];
      const share = (at: number): number => (at - start) / (end - start);
      return { from: share(a), to: share(b), fromAt: a * 60_000, toAt: b * 60_000 };
    };
    return {
      date,
      startAt: start * 60_000,
      hours: (end - start) / 60,
      open: openIntervals(hours, zone, start, end).map(({ from, to }) => part(from, to)),
      quiet: quietOn(date, hours.quiet, zone, start, end).map(([from, to]) => part(from, to)),
      sittings: sittings
        .map(({ title, startAt, endAt }) => ({ title, from: startAt / 60_000, to: endAt / 60_000 }))
        .filter(({ from, to }) => from < end && to > start)
        .map(({ title, from, to }) => ({ title, ...part(from, to) })),
      isException: hours.exceptions.some((each) => each.date === date),
    };
  });
}

/** The date so many days on; dates alone know no time zone, so they are reckoned as if in UTC. */
export function dateAfter(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

function startOf(date: string, zone: string): Minute {
  return instantOf(date, zone) ?? minute(0);
}

/** Quiet hours that run over midnight are two stretches of a day. */
function quietOn(
  date: string,
  quiet: DaySpan | undefined,
  zone: string,
  start: number,
  end: number,
): (readonly [number, number])[] {
  if (quiet === undefined || quiet.from === quiet.to) return [];
  const at = (time: string): number =>
    time === '24:00' ? end : (instantOf(`${date}T${time}`, zone) ?? start);
  const [from, to] = [at(quiet.from), at(quiet.to)];
  const stretches =
    quiet.from < quiet.to ? [[from, to] as const] : [[start, to] as const, [from, end] as const];
  return stretches.filter(([a, b]) => a < b);
}
