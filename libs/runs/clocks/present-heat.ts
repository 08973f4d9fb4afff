import { aroundC, fatsForC, heatCurve, type ClockInputs, type PieceHeatInputs } from '#clocks';
import { keptWays, type BatchPart, type HeatNote, type PartHeat, type WorkshopFacts } from '#contract';
import type { Batter, ResolvedRun } from '../input/resolve-run.js';
import { potashOf } from './forecast-clocks.js';
import { heatAdvice, heatNotes } from './heat-notes.js';
import { balanceOf, heatInputs, toldKept } from './part-heat.js';
import { inputsFor } from './part-inputs.js';

/** What would come of a part however its mould were kept. */
function waysToKeep(asked: PieceHeatInputs): PartHeat['keptElse'] {
  return keptWays.map((kept) => {
    const { gel, overheats } = balanceOf({ ...asked, kept });
    return { kept, ...gel, overheats };
  });
}

/** What would change the heat of a part, as its mould stands. @param inputs what its clocks read */
export function adviceOf(part: BatchPart, recipe: Batter, run: ResolvedRun, inputs: ClockInputs): HeatNote[] {
  const heat = heatInputs(part, run, inputs);
  if (heat === undefined) return [];
  const { gel, overheats } = balanceOf(heat);
  return heatAdvice({ gel, overheats, asked: recipe.gel, kept: heat.kept, keptElse: waysToKeep(heat) });
}

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
    keptElse: isMade ? [] : waysToKeep(asked),
  };
  return { ...told, notes: heatNotes({ ...told, isKeptTold: toldKept(part, run) !== undefined }) };
}
