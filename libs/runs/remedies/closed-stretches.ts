import { instantOf, localDateOf, openIntervals, weekDays, type OpenInterval } from '#hours';
import type { Span, WorkshopFacts } from '#contract';
import { minute, type Minute } from '#units';

/** Whoever gives no quiet hours is not asked to the bench at night all the same. Common practice, no source. */
const USUAL_NIGHT: Span = { from: '22:00', to: '07:00' };

/**
 * The stretches between two instants in which the maker is neither at the bench nor to be left in peace: where a sitting could
 * be added. Each lies in one local day.
 * @param open the maker’s hours, sorted and disjoint
 */
export function closedStretches(
  open: readonly OpenInterval[],
  { hours, timeZone }: WorkshopFacts,
  from: Minute,
  until: Minute,
): OpenInterval[] {
  const awake = wakingSpans(hours.quiet ?? USUAL_NIGHT);
  const weekly = Object.fromEntries(weekDays.map((day) => [day, awake])) as Record<
    (typeof weekDays)[number],
    Span[]
  >;
  return openIntervals({ weekly, exceptions: [] }, timeZone, from, until)
    .flatMap((waking) => byDay(waking, timeZone))
    .flatMap((waking) => without(waking, open));
}

/** Quiet hours may run over midnight; what is left of a day does not. */
function wakingSpans({ from, to }: Span): Span[] {
  if (from === to) return [{ from: '00:00', to: '24:00' }];
  if (from > to) return [{ from: to, to: from }];
  return [
    { from: '00:00', to: from },
    { from: to, to: '24:00' },
  ].filter((span) => span.from < span.to);
}

function byDay({ from, to }: OpenInterval, zone: string): OpenInterval[] {
  const found: OpenInterval[] = [];
  for (let at = from; at < to;) {
    // A day has 23 to 25 hours: 26 hours after its start is the next day in any case, and never the one after.
    const start = instantOf(localDateOf(at, zone), zone) ?? at;
    const next = instantOf(localDateOf(minute(start + 26 * 60), zone), zone) ?? to;
    found.push({ from: at, to: minute(Math.min(next, to)) });
    at = next;
  }
  return found;
}

function without({ from, to }: OpenInterval, open: readonly OpenInterval[]): OpenInterval[] {
  const found: OpenInterval[] = [];
  let at = from;
  for (const each of open) {
    if (each.to <= at) continue;
    if (each.from >= to) break;
    if (each.from > at) found.push({ from: at, to: each.from });
    at = each.to;
  }
  return at < to ? [...found, { from: at, to }] : found;
}
