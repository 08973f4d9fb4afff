import { fatsForC, heatCurve } from '#clocks';
import type { BatchPart, PartHeat, WorkshopFacts } from '#contract';
import type { ResolvedRun } from '../input/resolve-run.js';
import { potashOf } from './forecast-clocks.js';
import { heatInputs, partHeat } from './part-heat.js';
import { inputsFor } from './part-inputs.js';

/** What becomes of a part by its own heat, with the curve; null for what is not cast, and for potash soap. */
export function presentHeat(part: BatchPart, run: ResolvedRun, workshop: WorkshopFacts): PartHeat | null {
  if (potashOf(part, run) !== undefined) return null;
  const inputs = inputsFor(part, run, workshop);
  const asked = heatInputs(part, run, inputs);
  const heat = partHeat(part, run, inputs);
  const recipe = run.recipes.get(part.recipe);
  if (asked === undefined || heat === undefined || recipe === undefined) return null;
  const { gel, overheats, hottestC, hottestMin, cooledMin, gelC } = heat;
  return {
    ...{ gel, asked: recipe.gel, overheats, hottestC, hottestMin, cooledMin, gelC },
    fatsC: fatsForC(asked.make, inputs.roomTemperatureC, inputs.batterTemperatureC),
    curve: heatCurve(asked),
  };
}
