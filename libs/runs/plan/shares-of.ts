import { paceOf, type Forecast } from '#clocks';
import type { Share } from '#planner';
import { drawOf, lookedDrawOf, type AssessedRun } from '../assessed-run.js';
import { recipeKeyOf } from '../input/resolve-run.js';
import { OF_ITS_OWN } from '../observed/observe-draws.js';

/** How the names begin of what is not known of a recipe. */
export const OF_RECIPE = 'recipe ';

/** What is not known of a pace of a recipe. */
export function recipeDrawOf(pace: string, recipe: string): string {
  return `${OF_RECIPE}${pace} of ${recipe}`;
}

/** The luck of a batch. @param draw as `drawOf` names it */
export function batchDrawOf(draw: string): string {
  return `batch ${draw}`;
}

/**
 * What the draws of a run have in common with others, of this run or another: all batches the pace of the workshop, batches of
 * one recipe what is not known of the recipe, and states of one batch its luck.
 * @returns by the names of `drawOf` and `lookedDrawOf`; states of one draw by the one that varies least from batch to batch
 */
export function sharesOf(assessed: AssessedRun): Record<string, Share[]> {
  const { run } = assessed;
  const shares: Record<string, Share[]> = {};
  for (const [part, clocks] of assessed.clocks) {
    const alike = new Map<string, Forecast>();
    for (const [state, forecast] of clocks) {
      const draw = drawOf(run, part, state);
      const known = alike.get(draw);
      if (known === undefined || forecast.batchSigma < known.batchSigma) alike.set(draw, forecast);
    }
    for (const [draw, forecast] of alike) {
      const pace = paceOf[forecast.state];
      const of = {
        workshop: pace,
        recipe: recipeDrawOf(pace, recipeKeyOf(run, part)),
        batch: batchDrawOf(draw),
      };
      shares[draw] = levels(forecast, forecast.batchSigma, of);
      const together = Math.sqrt(Math.max(0, forecast.batchSigma ** 2 - OF_ITS_OWN ** 2));
      for (const state of clocks.keys()) {
        const looked = lookedDrawOf(run, part, state);
        if (drawOf(run, part, state) === draw && looked in assessed.draws) {
          shares[looked] = levels(forecast, together, of);
        }
      }
    }
  }
  return shares;
}

function levels(
  { sigma, sharedSigma, recipeSigma }: Forecast,
  batchSigma: number,
  of: { readonly workshop: string; readonly recipe: string; readonly batch: string },
): Share[] {
  const share = (name: string, part: number): Share[] =>
    part > 0 ? [{ of: name, share: part / sigma }] : [];
  return [
    ...share(`workshop ${of.workshop}`, sharedSigma),
    ...share(of.recipe, recipeSigma),
    ...share(of.batch, batchSigma),
  ];
}
