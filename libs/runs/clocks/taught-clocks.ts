import { paceOf, withOffset, offsetPrior, type Forecast, type RecipeOffset } from '#clocks';
import type { Learned, LearnedPace } from '#contract';
import { recipeKeyOf, type ResolvedRun } from '../input/resolve-run.js';
import type { PartClocks } from './forecast-clocks.js';

/**
 * The clocks of a run's parts with what was learned. Without a lesson a forecast stays as it is.
 * @param learnedFor what was learned for a part, by its key
 */
export function taughtClocks(
  run: ResolvedRun,
  clocks: ReadonlyMap<string, PartClocks>,
  learnedFor: (part: string) => Learned,
): Map<string, PartClocks> {
  return new Map(
    [...clocks].map(([part, states]) => {
      const learned = learnedFor(part);
      const recipe = recipeKeyOf(run, part);
      return [
        part,
        new Map([...states].map(([state, forecast]) => [state, taught(forecast, recipe, learned)])),
      ];
    }),
  );
}

function taught(forecast: Forecast, recipe: string, learned: Learned): Forecast {
  const pace = learned.paces.find((each) => each.pace === paceOf[forecast.state]);
  const earliest = earliestOf(forecast, recipe, learned, pace);
  const bounded = earliest === undefined ? forecast : { ...forecast, earliestMin: earliest };
  if (pace === undefined || pace.batches === 0) return bounded;
  const { mean, sd, sharedSd } = offsetOf(pace, recipe, forecast.ruleSigma);
  return withOffset(bounded, {
    ...{ mean, sd, sharedSd, spread: pace.spread },
    reason: {
      ...{ rule: 'lesson', input: 'log', value: pace.batches, usual: 0 },
      factor: Math.exp(mean),
      evidence: { kind: 'bench log' },
    },
  });
}

/** What is added to the logarithm of a forecast for a recipe. Of one that was never made it is what the others tell. */
function offsetOf({ workshop, recipes }: LearnedPace, recipe: string, ruleSigma: number): RecipeOffset {
  const known = recipes.find((each) => each.recipe === recipe);
  if (known !== undefined) return known;
  const sd = Math.sqrt(workshop.sd ** 2 + offsetPrior.recipeSigma ** 2 + ruleSigma ** 2);
  return { mean: workshop.mean, sd, sharedSd: workshop.sd };
}

/** A look at a batch of the recipe before it was ready tells more than when stages were done. */
const NOT_YET = 2;

function earliestOf(
  { state, medianMin }: Forecast,
  recipe: string,
  { earliest }: Learned,
  pace: LearnedPace | undefined,
): number | undefined {
  const soonest = earliest.find((each) => each.recipe === recipe && each.state === state);
  if (soonest === undefined) return undefined;
  const seen = pace?.recipes.find((each) => each.recipe === recipe)?.seen ?? [];
  const looked = seen.some((batch) => batch[NOT_YET] !== null);
  return looked ? undefined : medianMin * Math.exp(soonest.logRatio);
}
