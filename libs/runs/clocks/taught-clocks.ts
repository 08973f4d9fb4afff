import { offsetPrior, paceOf, withOffset, type Forecast, type Offset } from '#clocks';
import type { Learned, LearnedPace } from '#contract';
import { recipeKeyOf, type ResolvedRun } from '../input/resolve-run.js';
import type { PartClocks } from './forecast-clocks.js';

/** The clocks of a run's parts with what was learned. Without a lesson a forecast stays as it is. */
export function taughtClocks(
  run: ResolvedRun,
  clocks: ReadonlyMap<string, PartClocks>,
  learned: Learned,
): Map<string, PartClocks> {
  return new Map(
    [...clocks].map(([part, states]) => [
      part,
      new Map(
        [...states].map(([state, forecast]) => [state, taught(forecast, recipeKeyOf(run, part), learned)]),
      ),
    ]),
  );
}

function taught(forecast: Forecast, recipe: string, { paces }: Learned): Forecast {
  const pace = paces.find((each) => each.pace === paceOf[forecast.state]);
  if (pace === undefined) return forecast;
  const { mean, sd } = offsetOf(pace, recipe);
  const batches = pace.recipes.reduce((sum, each) => sum + each.batches, 0);
  return withOffset(forecast, {
    mean,
    sd,
    reason: {
      ...{ rule: 'lesson', input: 'log', value: batches, usual: 0 },
      factor: Math.exp(mean),
      evidence: { kind: 'bench log' },
    },
  });
}

/** What is added to the logarithm of a forecast for a recipe. Of one that was never made it is what the others tell. */
function offsetOf({ workshop, recipes }: LearnedPace, recipe: string): Offset {
  const known = recipes.find((each) => each.recipe === recipe);
  if (known !== undefined) return { mean: known.mean, sd: known.sd };
  return { mean: workshop.mean, sd: Math.hypot(workshop.sd, offsetPrior.recipeSigma) };
}
