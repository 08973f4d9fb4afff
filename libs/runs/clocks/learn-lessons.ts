import {
  learn,
  oneOf,
  paceOf,
  withOffset,
  type Forecast,
  type Lessons,
  type Observation,
  type Pace,
} from '#clocks';
import type { PartClocks } from './forecast-clocks.js';
import type { RunStanding } from '../run-in-hand.js';
import { badBatch } from '../log/bad-batch.js';
import { sightingsOf, type Sighting } from '../log/sightings.js';
import type { RunWorkings } from '../input/workings.js';

/** What the bench logs of a workshop teach, by the pace that they tell of. */
export type LessonBook = ReadonlyMap<Pace, Lessons>;

/**
 * What runs teach the clocks. A batch that went wrong is no lesson in how batches go, and entries that are to be
 * forgotten teach nothing.
 * @param standings with clocks as forecast without any lesson
 */
export function lessonsFrom(standings: readonly RunStanding[]): LessonBook {
  const byPace = new Map<Pace, Observation[]>();
  for (const standing of standings) {
    for (const [pace, observations] of observationsOf(standing)) {
      byPace.set(pace, [...(byPace.get(pace) ?? []), ...observations]);
    }
  }
  return new Map([...byPace].map(([pace, observations]) => [pace, learn(observations)]));
}

/**
 * One observation for each recipe and pace of a run: batches of one recipe in one run are fast or slow together (`drawOf`),
 * so they are seen once, however many there are and however often they were looked at.
 */
function observationsOf(standing: RunStanding): Map<Pace, Observation[]> {
  const { progress, run, clocks } = standing;
  const seen = new Map<string, { pace: Pace; recipe: string; sightings: SightingOfBatch[] }>();
  for (const { part, state, saw, by, minutes, entry } of sightingsOf(standing)) {
    const forecast = clocks.get(part)?.get(state);
    if (forecast === undefined || badBatch(standing, part) || progress.forgotten.has(entry)) continue;
    const pace = paceOf[state];
    const recipe = stuffOf(run, part);
    const name = `${pace} ${recipe}`;
    const batch = seen.get(name) ?? { pace, recipe, sightings: [] };
    seen.set(name, batch);
    batch.sightings.push({
      kind: saw === 'just-now' ? 'exact' : saw,
      by,
      logRatio: Math.log(minutes / forecast.medianMin),
      sigma: forecast.batchSigma,
      entry: `${run.order.key}/${entry}`,
    });
  }
  const found = new Map<Pace, Observation[]>();
  for (const { pace, recipe, sightings } of seen.values()) {
    const one = oneOf(recipe, thoseThatTeach(sightings));
    if (one !== undefined) found.set(pace, [...(found.get(pace) ?? []), one]);
  }
  return found;
}

type SightingOfBatch = Parameters<typeof oneOf>[1][number] & Pick<Sighting, 'by'>;

/**
 * A stage is done when the maker gets to it, which is some time after the soap is ready, and a window that was missed is
 * often logged as done too. By itself “done” therefore tells of the maker's hours, not of the soap: taken for “ready by
 * then”, it would move every forecast one way with each run. It teaches where a look at the same batch says that the
 * soap was not ready before; then it came between the two.
 */
function thoseThatTeach(sightings: readonly SightingOfBatch[]): readonly SightingOfBatch[] {
  const looked = sightings.some(({ by, kind }) => by === 'look' && kind !== 'already');
  return looked ? sightings : sightings.filter(({ by }) => by === 'look');
}

/** What a part is made of: batches of one recipe share a lesson. */
export function stuffOf(run: RunWorkings, part: string): string {
  const found = run.parts.get(part);
  if (found?.kind === 'batch') return found.recipe;
  return found?.kind === 'melt-and-pour' ? found.material : part;
}

/** The clocks of a run's parts with what was learned. Without a lesson a forecast stays as it is. */
export function withLessons(
  run: RunWorkings,
  clocks: ReadonlyMap<string, PartClocks>,
  book: LessonBook,
): Map<string, PartClocks> {
  return new Map(
    [...clocks].map(([part, states]) => [
      part,
      new Map([...states].map(([state, forecast]) => [state, taught(forecast, stuffOf(run, part), book)])),
    ]),
  );
}

function taught(forecast: Forecast, recipe: string, book: LessonBook): Forecast {
  const lessons = book.get(paceOf[forecast.state]);
  if (lessons === undefined || lessons.observations.length === 0) return forecast;
  const { mean, sd } = lessons.recipe(recipe);
  const batches = lessons.observations.length;
  const own = lessons.observations.filter((observation) => observation.recipe === recipe).length;
  return withOffset(forecast, {
    mean,
    sd,
    reason: {
      rule: 'lesson',
      read: `${String(batches)} ${batches === 1 ? 'batch' : 'batches'} in your log, ${String(own)} of this recipe`,
      factor: Math.exp(mean),
      why: 'Your room, moulds and fats have a pace of their own.',
      evidence: 'your bench log',
    },
  });
}
