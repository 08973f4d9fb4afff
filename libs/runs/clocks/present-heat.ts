import { aroundC, fatsForC, heatCurve } from '#clocks';
import { keptWays, type BatchPart, type PartHeat, type WorkshopFacts } from '#contract';
import type { ResolvedRun } from '../input/resolve-run.js';
import { potashOf } from './forecast-clocks.js';
import { heatNotes } from './heat-notes.js';
import { balanceOf, heatInputs, toldKept } from './part-heat.js';
import { inputsFor } from './part-inputs.js';

/** What becomes of a part by its own heat, with the curve; null for what is not cast, and for potash soap. */
export function presentHeat(part: BatchPart, run: ResolvedRun, workshop: WorkshopFacts): PartHeat | null {
  if (potashOf(part, run) !== undefined) return null;
  const inputs = inputsFor(part, run, workshop);
  const asked = heatInputs(part, run, inputs);
  const recipe = run.recipes.get(part.recipe);
  if (asked === undefined || recipe === undefined) return null;
  const { gel, overheats, hottestC, hottestMin, cooledMin, gelC } = balanceOf(asked);
  const { kept, isMade = false } = asked;
  const told = {
    ...{ gel, asked: recipe.gel, overheats, hottestC, hottestMin, cooledMin, gelC, kept, isMade },
    aroundC: aroundC(asked),
    fatsC: fatsForC(asked.make, inputs.roomTemperatureC, inputs.batterTemperatureC),
    curve: heatCurve(asked),
    keptElse: isMade
      ? []
      : keptWays.map((way) => {
          const balance = balanceOf({ ...asked, kept: way });
          return { kept: way, ...balance.gel, overheats: balance.overheats };
        }),
  };
  return { ...told, notes: heatNotes({ ...told, isKeptTold: toldKept(part, run) !== undefined }) };
}
