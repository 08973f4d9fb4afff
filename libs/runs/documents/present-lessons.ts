import {
  forecast,
  ofTypicalWorkshop,
  offsetPrior,
  referenceInputs,
  stateIds,
  paceOf,
  type Offset,
  type Pace,
} from '#clocks';
import type { Learned, Lesson, OnlyDone, RunTeachings } from '#contract';
import { normalQuantile } from '#units';
import type { ResolvedRun } from '../input/resolve-run.js';

/**
 * What the log has taught, with what it rests on: for each pace one lesson for the workshop at large and one for each
 * recipe that was logged, so that a maker can see where a forecast comes from and have an entry forgotten.
 * @param teachings the runs' that it was learned from, as far as they are at hand: the observations that are listed
 * @param run its recipes lend their titles; absent: they have none
 */
export function presentLessons(
  learned: Learned,
  teachings: readonly RunTeachings[],
  run?: ResolvedRun,
): Lesson[] {
  return learned.paces.flatMap(({ pace, workshop, spread, batches, recipes }) => {
    // Of what was only ever done nothing was learned.
    if (batches === 0) return [];
    const observations = teachings.flatMap((each) => each.observations).filter((each) => each.pace === pace);
    const sd = Math.hypot(workshop.sd, offsetPrior.recipeSigma);
    return [
      shown({ pace, spread, recipe: null, title: null, offset: workshop, sd, observations }),
      ...[...recipes]
        .sort((a, b) => (a.recipe < b.recipe ? -1 : 1))
        .map(({ recipe, mean, sd: known }) =>
          shown({
            ...{ pace, spread, recipe, title: run?.recipes.get(recipe)?.title ?? null },
            ...{ offset: { mean, sd: known }, sd: known },
            observations: observations.filter((each) => each.recipe === recipe),
          }),
        ),
    ];
  });
}

/** What somebody comes back to look at; batter, lye and a layer that was just poured they stand beside. */
const LOOKED_AT: readonly Pace[] = ['set', 'glaze', 'cure'];

/** Of which paces only done stages were logged, so that nothing was learned. @returns nothing to be spread where there is none */
export function presentOnlyDone({ paces }: Learned): { readonly onlyDone?: OnlyDone[] } {
  const onlyDone = paces.flatMap(({ pace, batches, recipes }) => {
    const seen = recipes.reduce((sum, each) => sum + each.seen.length, 0);
    return batches === 0 && seen > 0 && LOOKED_AT.includes(pace) ? [{ pace, batches: seen }] : [];
  });
  return onlyDone.length === 0 ? {} : { onlyDone };
}

interface Told {
  readonly pace: Pace;
  /** How many times batches vary as much as the rules say. */
  readonly spread: number;
  readonly recipe: string | null;
  readonly title: string | null;
  readonly offset: Offset;
  /** What is not known of the next batch's offset. */
  readonly sd: number;
  readonly observations: RunTeachings['observations'];
}

function shown({ pace, spread, recipe, title, offset, sd, observations }: Told): Lesson {
  const unlearned = Math.hypot(offsetPrior.workshopSigma, offsetPrior.recipeSigma);
  const batch = batchSigmaOf(pace);
  return {
    pace,
    recipe,
    recipeTitle: title,
    factor: factorOf(offset.mean, offset.sd),
    before: factorOf(0, unlearned),
    widthShare: Math.hypot(spread * batch, sd) / Math.hypot(batch, unlearned),
    observations: observations.map(({ recipe: of, entries, exact, above, below }) => ({
      recipe: of,
      entries: [...entries],
      ...(exact === undefined ? {} : { exact: Math.exp(exact) }),
      ...(above === undefined ? {} : { above: Math.exp(above) }),
      ...(below === undefined ? {} : { below: Math.exp(below) }),
    })),
  };
}

/** 10th, 50th and 90th percentile of a factor whose logarithm is normal. */
function factorOf(mean: number, sd: number): Lesson['factor'] {
  const at = (p: number): number => Math.exp(mean + sd * normalQuantile(p));
  return { low: at(0.1), likely: at(0.5), high: at(0.9) };
}

/** What a usual batch varies by: that of the pace's first state at the reference point. */
function batchSigmaOf(pace: Pace): number {
  const state = stateIds.find((each) => paceOf[each] === pace);
  if (state === undefined) throw new Error(`no state has the pace ${pace}`);
  return ofTypicalWorkshop(forecast(state, referenceInputs)).sigma;
}
