import { instantOf, localDateOf, quietAround, type OpenInterval } from '#hours';
import { minute, type Minute } from '#units';
import type { WorkshopFacts } from '#contract';

/** Who gives no quiet hours is not asked to the bench at night all the same. Common practice, no source. */
const USUAL_NIGHT = { from: '22:00', to: '07:00' };
/** On what grid a night is looked for within a stretch, in minutes: quiet hours are told to the minute, rarely so. */
const GRID = 30;

/**
 * The stretches between two instants in which she is neither at the bench nor to be left in peace: where a sitting could
 * be added. Each lies in one local day.
 * @param open her hours, sorted and disjoint
 */
export function closedStretches(
  open: readonly OpenInterval[],
  { hours, timeZone }: WorkshopFacts,
  from: Minute,
  until: Minute,
): OpenInterval[] {
  const quiet = hours.quiet ?? USUAL_NIGHT;
  const free = (at: Minute): boolean => quietAround(at, quiet, timeZone) === undefined;
  return gaps(open, from, until)
    .flatMap((gap) => byDay(gap, timeZone))
    .flatMap((gap) => pieces(gap, free));
}

function gaps(open: readonly OpenInterval[], from: Minute, until: Minute): OpenInterval[] {
  const found: OpenInterval[] = [];
  let at = from;
  for (const interval of open) {
    if (interval.from > at) found.push({ from: at, to: minute(Math.min(interval.from, until)) });
    at = minute(Math.max(at, interval.to));
    if (at >= until) return found;
  }
  return [...found, { from: at, to: until }];
}

function byDay({ from, to }: OpenInterval, zone: string): OpenInterval[] {
  const found: OpenInterval[] = [];
  for (let at = from; at < to;) {
    // A day of 23 to 25 hours: 26 hours after its start is the next day in any case, and never the one after.
    const start = instantOf(localDateOf(at, zone), zone) ?? at;
    const next = instantOf(localDateOf(minute(start + 26 * 60), zone), zone) ?? to;
    found.push({ from: at, to: minute(Math.min(next, to)) });
    at = next;
  }
  return found;
}

/** The free pieces of a stretch; their ends lie on the grid or are those of the stretch. */
function pieces({ from, to }: OpenInterval, free: (at: Minute) => boolean): OpenInterval[] {
  const steps: Minute[] = [];
  for (let at = Math.ceil(from / GRID) * GRID; at < to; at += GRID) steps.push(minute(at));
  const edges = [from, ...steps.filter((at) => at > from), to];
  const found: OpenInterval[] = [];
  edges.slice(1).forEach((end, i) => {
    const begin = edges[i] ?? from;
    if (!free(begin) || !free(minute(end - 1))) return;
    const last = found.at(-1);
    if (last?.to === begin) found[found.length - 1] = { from: last.from, to: end };
    else found.push({ from: begin, to: end });
  });
  return found;
}
