import { states, zOf, type LogNormal } from '#clocks';
import type { Issue } from '#units';
import type { PartClocks } from '../clocks/forecast-clocks.js';
import type { LogLine } from '../input/input.js';
import { withoutParts, type ResolvedRun } from '../input/resolve-run.js';
import { foldLog } from './fold-log.js';
import { sightingsOf, type Sighting } from './sightings.js';

/**
 * Standard deviations of the forecast, with all that is not known of the workshop, beyond which a time is more likely a
 * slip than soap: about one look in a thousand is as far off by itself. A choice, no source.
 */
const DOUBTFUL = 3;

/**
 * Entries of a run whose time is hard to believe and not confirmed: done long before the soap can have been ready, not
 * ready long after it should have been, or a look far out of proportion. What a look of this run has told before is not
 * doubted again. Asked when an entry is made or a file is read; what stands in a log already is not asked about again.
 * @param lines of this run only
 * @param clocks of its parts, with what was learned
 * @returns issues with paths from the log's root, at most one an entry: place of the line, then the field
 */
export function askTimes(
  run: ResolvedRun,
  lines: readonly LogLine[],
  clocks: ReadonlyMap<string, PartClocks>,
): Issue[] {
  const { progress } = foldLog(run, lines);
  const sightings = sightingsOf({ run: withoutParts(run, progress.dropped), progress, clocks });
  const asked = new Map<number, Issue>();
  sightings.forEach((sighting, i) => {
    const { place, part, state } = sighting;
    const entry = lines[place]?.entry;
    if (entry === undefined || asked.has(place) || !isAsked(sighting)) return;
    if ('confirmed' in entry && entry.confirmed === true) return;
    const forecast = clocks.get(part)?.get(state);
    if (forecast === undefined || isPlausible(sighting, forecast)) return;
    if (sightings.slice(0, i).some((before) => tellsTheSame(before, sighting))) return;
    const title = run.parts.get(part)?.title ?? part;
    const issue = doubt(sighting, forecast, { title, at: entry.at });
    asked.set(place, { ...issue, path: [place, ...issue.path] });
  });
  return [...asked.values()];
}

/**
 * What follows from a stage that was done is doubted only where it opened the stage, and not for batter: a stage is often
 * logged some time after it was done, which says nothing of windows that closed since, nor of minutes.
 */
function isAsked({ by, saw, state }: Sighting): boolean {
  return by === 'look' || (saw === 'already' && states[state].clock !== 'batter');
}

function isPlausible({ saw, minutes }: Sighting, forecast: LogNormal): boolean {
  const z = zOf(forecast, minutes);
  if (saw === 'not-yet') return z <= DOUBTFUL;
  if (saw === 'already') return z >= -DOUBTFUL;
  return Math.abs(z) <= DOUBTFUL;
}

function tellsTheSame(before: Sighting, { part, state, saw, minutes }: Sighting): boolean {
  if (before.part !== part || before.state !== state) return false;
  if (saw === 'not-yet') return before.saw !== 'already' && before.minutes >= minutes;
  return before.saw !== 'not-yet' && before.minutes <= minutes;
}

function doubt(
  { state, saw, minutes }: Sighting,
  forecast: LogNormal,
  { title, at }: { readonly title: string; readonly at: string },
): Issue {
  const span = DOUBTFUL * forecast.sigma;
  const [leastMin, mostMin] = [forecast.medianMin * Math.exp(-span), forecast.medianMin * Math.exp(span)];
  return {
    code: 'log.time-doubtful',
    path: ['at'],
    value: at,
    ...{ title, state, saw, afterMin: minutes, leastMin, mostMin },
  };
}
