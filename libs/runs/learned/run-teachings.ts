import { oneOf, paceOf, type Pace } from '#clocks';
import type { RunTeachings } from '#contract';
import { expectedUse } from '../input/expected-use.js';
import { recipeKeyOf } from '../input/resolve-run.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import { badBatch } from '../log/bad-batch.js';
import { sightingsOf, type Sighting } from '../log/sightings.js';
import { batchNameOf, type RunState } from '../assessed-run.js';

/**
 * What a run teaches, where it stands. A batch that went wrong is no lesson in how batches go, and entries that are to be
 * forgotten teach nothing.
 * @param runState with clocks as forecast without any lesson
 */
export function runTeachings(runState: RunState): RunTeachings {
  return {
    observations: batchObservations(runState).map(({ observation }) => observation),
    earliest: earliestOf(runState),
    weighings: weighingsOf(runState),
  };
}

/** What was seen of one batch, and which it is. */
export interface BatchObservation {
  readonly batch: string;
  readonly observation: RunTeachings['observations'][number];
}

/** One observation for each batch and pace of a run, however often it was looked at: all looks share the batch's luck. */
export function batchObservations(runState: RunState): BatchObservation[] {
  const { run } = runState;
  const seen = new Map<string, { pace: Pace; batch: string; recipe: string; sightings: SightingOfBatch[] }>();
  for (const sighting of teachingSightings(runState)) {
    const { part, state, saw, by, minutes, at, entry, openedMin, forecast } = sighting;
    const pace = paceOf[state];
    const batch = batchNameOf(run, part);
    const name = `${pace} ${batch}`;
    const known = seen.get(name) ?? { pace, batch, recipe: recipeKeyOf(run, part), sightings: [] };
    seen.set(name, known);
    known.sightings.push({
      kind: saw === 'just-now' ? 'exact' : saw,
      logRatio: Math.log(minutes / forecast.medianMin),
      ...(openedMin !== undefined && { opened: Math.log(openedMin / forecast.medianMin) }),
      ...{ by, minutes, at, sigma: forecast.batchSigma, doubt: forecast.ruleSigma },
      entry: `${run.order.key}/${entry}`,
    });
  }
  return [...seen.values()].flatMap(({ pace, batch, recipe, sightings }) => {
    const one = oneOf(recipe, thoseThatTeach(sightings));
    return one === undefined ? [] : [{ batch, observation: { pace, ...one, entries: [...one.entries] } }];
  });
}

function teachingSightings(runState: RunState) {
  return sightingsOf(runState).flatMap((sighting) => {
    const forecast = runState.clocks.get(sighting.part)?.get(sighting.state);
    const isLesson = !badBatch(runState, sighting.part) && !runState.progress.forgotten.has(sighting.entry);
    return forecast !== undefined && isLesson ? [{ ...sighting, forecast }] : [];
  });
}

type SightingOfBatch = Parameters<typeof oneOf>[1][number] & Pick<Sighting, 'by'>;

/**
 * A window that was missed is often logged as done too, so that it was still open counts only where somebody looked at
 * the same batch.
 */
function thoseThatTeach(sightings: readonly SightingOfBatch[]): readonly SightingOfBatch[] {
  const looked = sightings.some(({ by, kind }) => by === 'look' && kind !== 'already');
  return looked ? sightings : sightings.filter(({ kind }) => kind === 'already');
}

/** How soon each state was found ready. */
function earliestOf(runState: RunState): RunTeachings['earliest'] {
  return teachingSightings(runState).flatMap(({ part, state, saw, minutes, forecast }) =>
    saw === 'not-yet'
      ? []
      : [
          {
            ...{ recipe: recipeKeyOf(runState.run, part), state },
            logRatio: Math.log(minutes / forecast.medianMin),
          },
        ],
  );
}

/** What its pieces took on the scales. */
function weighingsOf(runState: RunState): RunTeachings['weighings'] {
  const { run, progress } = runState;
  return progress.weighed.flatMap(({ part: key, pieces, usedG, at, entry }) => {
    const part = run.parts.get(key);
    if (part === undefined || part.kind === 'decor') return [];
    if (progress.forgotten.has(entry) || badBatch(runState, key)) return [];
    const { meanMl } = expectedUse(part, useSurroundings(part, run));
    return [{ design: run.design.key, part: key, pieces, usedG, at, expectedMl: meanMl }];
  });
}
