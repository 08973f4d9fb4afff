import { paceOf } from '#clocks';
import { batchNameOf, drawOf, lookedDrawOf, type AssessedRun } from '../assessed-run.js';
import { recipeKeyOf } from '../input/resolve-run.js';
import { batchDrawOf, recipeDrawOf } from './shares-of.js';

/**
 * By which streams of random numbers the draws of runs are sampled: by the places of runs, batches and recipes, so that no plan
 * hangs on what a maker calls them, or in which language. What is shared by the whole workshop has the name of its pace.
 * @returns by the names of `drawOf`, `lookedDrawOf` and `sharesOf`
 */
export function streamsOf(runs: readonly AssessedRun[]): Record<string, string> {
  const streams: Record<string, string> = {};
  const recipes = new Map<string, number>();
  for (const [place, { run, clocks }] of runs.entries()) {
    const { parts } = run.design;
    streams[scalesDrawOf(run.order.key)] = `${String(place)} scales`;
    for (const { key } of parts) {
      const batch = parts.findIndex((other) => batchNameOf(run, other.key) === batchNameOf(run, key));
      const recipe = recipeKeyOf(run, key);
      if (!recipes.has(recipe)) recipes.set(recipe, recipes.size);
      for (const state of clocks.get(key)?.keys() ?? []) {
        const pace = paceOf[state];
        const stream = `${String(place)} ${String(batch)} ${pace}`;
        const draw = drawOf(run, key, state);
        streams[draw] = stream;
        streams[lookedDrawOf(run, key, state)] = `${stream} ${state}`;
        streams[batchDrawOf(draw)] = `batch ${stream}`;
        streams[recipeDrawOf(pace, recipe)] = `recipe ${pace} ${String(recipes.get(recipe))}`;
      }
    }
  }
  return streams;
}

/** The draw of a cure as the scales have it. */
export function scalesDrawOf(run: string): string {
  return `${run}/scales`;
}
