import { batchForFats } from '#chemistry';
import type { WeighIn } from '#clocks';
import { expectedUse } from '../input/expected-use.js';
import { DOUBTFUL_TIMES, pieceGrams } from '../input/piece-grams.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import type { ResolvedRun } from '../input/resolve-run.js';
import type { CureWeighing } from '../log/run-progress.js';
import { cureStarts, type AssessedRun } from '../assessed-run.js';

const MINUTES_PER_DAY = 1440;

type Unscaled = Omit<AssessedRun, 'scales'>;

/** A weighing of a lot, per piece, from the start of its cure. */
export interface LotWeighing extends WeighIn {
  readonly from: CureWeighing;
  /**
   * False: something was put on the pieces after it, so it says nothing of what they lose; or it is so far from the
   * others that it is a slip, however sure the maker was of it.
   */
  readonly counts: boolean;
}

/** The weighings of a lot, in the log's order; none while a part of it does not cure yet. */
export function lotWeighings(assessed: Unscaled): LotWeighing[] {
  const start = cureStart(assessed);
  const finished = lastTouched(assessed);
  if (start === undefined) return [];
  const usual = middleOf([
    pieceGrams(assessed.run),
    ...assessed.progress.weighIns.map(({ massG, pieces }) => massG / pieces),
  ]);
  return assessed.progress.weighIns.map((from) => {
    const massG = from.massG / from.pieces;
    const isSlip = massG >= usual * DOUBTFUL_TIMES || massG <= usual / DOUBTFUL_TIMES;
    return {
      ...{ days: (from.at - start) / MINUTES_PER_DAY, massG, from },
      counts: from.at >= finished && !isSlip,
    };
  });
}

/** The lower of the two middle ones where there is none in the middle. */
function middleOf(values: readonly number[]): number {
  const sorted = values.filter((value) => value > 0).sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? NaN;
}

/** When the last part of the lot began to cure; undefined while one has not. */
export function cureStart(assessed: Unscaled): number | undefined {
  const starts = cureStarts(assessed).map(({ attempt }) => attempt.endedAt);
  if (starts.length === 0 || starts.includes(undefined)) return undefined;
  return Math.max(...starts.map(Number));
}

/** When the last stage so far that was done to the pieces ended. */
function lastTouched({ progress }: Unscaled): number {
  return Math.max(
    0,
    ...progress.attempts.flatMap(({ status, endedAt }) => (status === 'done' ? (endedAt ?? []) : [])),
  );
}

/** Water of the whole piece as it was made, by mass: no more can be lost. */
export function waterShare(run: ResolvedRun): number {
  let water = 0;
  let mass = 0;
  for (const part of run.design.parts) {
    if (part.kind !== 'batch') continue;
    const recipe = run.recipes.get(part.recipe);
    const sample = recipe && batchForFats({ ...recipe, colourants: part.colourants }, run.fats, 1000);
    if (sample?.ok !== true) continue;
    const around = useSurroundings(part, run);
    const grams = expectedUse(part, around).meanMl * around.densityGPerMl;
    const { water: views, fatsG, batchG } = sample.value;
    mass += grams;
    water += (grams * views.allWaterPercentOfFats * fatsG) / 100 / batchG;
  }
  return water / mass;
}
