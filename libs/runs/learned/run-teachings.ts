import { oneOf, paceOf, type Pace } from '#clocks';
import type { RunTeachings } from '#contract';
import { expectedUse } from '../input/expected-use.js';
import { recipeKeyOf } from '../input/resolve-run.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import { badBatch } from '../log/bad-batch.js';
import { sightingsOf, type Sighting } from '../log/sightings.js';
import type { RunState } from '../assessed-run.js';

/**
 * What a run teaches, where it stands. A batch that went wrong is no lesson in how batches go, and entries that are to be
 * forgotten teach nothing.
 * @param runState with clocks as forecast without any lesson
 */
export function runTeachings(runState: RunState): RunTeachings {
  return { observations: observationsOf(runState), weighings: weighingsOf(runState) };
}

/**
 * One observation for each recipe and pace of a run: batches of one recipe in one run are fast or slow together (`drawOf`),
 * so they are seen once, however many there are and however often they were looked at.
 */
function observationsOf(runState: RunState): RunTeachings['observations'] {
  const { progress, run, clocks } = runState;
  const seen = new Map<string, { pace: Pace; recipe: string; sightings: SightingOfBatch[] }>();
  for (const { part, state, saw, by, minutes, entry } of sightingsOf(runState)) {
    const forecast = clocks.get(part)?.get(state);
    if (forecast === undefined || badBatch(runState, part) || progress.forgotten.has(entry)) continue;
    const pace = paceOf[state];
    const recipe = recipeKeyOf(run, part);
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
  return [...seen.values()].flatMap(({ pace, recipe, sightings }) => {
    const one = oneOf(recipe, thoseThatTeach(sightings));
    return one === undefined ? [] : [{ pace, ...one, entries: [...one.entries] }];
  });
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
