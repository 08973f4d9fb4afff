import { DateTime } from 'luxon';
import type { Minute } from '#units';
import { timeOnDay } from './local-time.js';
import type { DaySpan, OpenInterval } from './open-intervals.js';

/**
 * The quiet stretch an instant lies in.
 * @param quiet may run over midnight: from 22:00 to 07:00
 * @returns undefined when the maker may be disturbed at that instant
 */
export function quietAround(at: Minute, quiet: DaySpan | undefined, zone: string): OpenInterval | undefined {
  if (quiet === undefined || quiet.from === quiet.to) return undefined;
  const today = DateTime.fromMillis(at * 60_000, { zone }).startOf('day');
  for (const back of [0, 1]) {
    const day = today.minus({ days: back });
    const from = timeOnDay(day, quiet.from);
    const to = timeOnDay(quiet.to > quiet.from ? day : day.plus({ days: 1 }), quiet.to);
    if (at >= from && at < to) return { from, to };
  }
  return undefined;
}
