import { checkInputs, forecast, measures, stateIds, type Forecast, type StateId } from '#clocks';
import { effectiveLyePercent } from '#chemistry';
import type { BatchPart, Part, WorkshopFacts } from '#contract';
import type { Issue } from '#units';
import { batchCooling, coolingForecasts, meltForecasts } from './batch-cooling.js';
import type { RunsInput } from '../input/input.js';
import { partBatter } from '../input/part-batter.js';
import { stateHasClock } from '../input/states-of-parts.js';
import type { ResolvedRun } from '../input/resolve-run.js';
import { inputsFor } from './part-inputs.js';

/** Forecasts of one part's batch, by state. */
export type PartClocks = ReadonlyMap<StateId, Forecast>;

/**
 * Forecasts every state of every part that has clocks, at this workshop's room.
 * @returns by part key; parts without clocks (decor, potash soap) are absent
 */
function forecastClocks(run: ResolvedRun, workshop: WorkshopFacts): Map<string, PartClocks> {
  const clocks = new Map<string, PartClocks>();
  for (const part of run.design.parts) {
    if (part.kind === 'decor' || potashOf(part, run) !== undefined) continue;
    const inputs = inputsFor(part, run, workshop);
    const wanted = stateIds.filter((state) => stateHasClock(part.kind, state));
    const cooling =
      part.kind === 'batch'
        ? coolingForecasts(batchCooling(part, run, workshop))
        : meltForecasts(part, run, workshop);
    const forecasts = [...wanted.map((state) => forecast(state, inputs)), ...cooling];
    clocks.set(part.key, new Map(forecasts.map((each) => [each.state, each])));
  }
  return clocks;
}

/**
 * Share of the alkali that is KOH, by moles, from which on a soap is a soft paste and no bar: common practice, no source.
 * What is known of times is known of soda soap, so none is forecast for it.
 */
export const MOST_KOH_PERCENT = 10;

/** The share of KOH of a part that is potash soap, per cent; undefined for a part that sets. */
export function potashOf(part: Part, run: ResolvedRun): number | undefined {
  const recipe = part.kind === 'batch' ? run.recipes.get(part.recipe) : undefined;
  return recipe !== undefined && recipe.kohSharePercent > MOST_KOH_PERCENT
    ? recipe.kohSharePercent
    : undefined;
}

/**
 * Issues with values that no clock can be read for, such as a batter far colder than the room. Each stands at the
 * recipe it comes from, or at the room, with its path from the input's root.
 */
export function checkClockInputs(run: ResolvedRun, input: RunsInput): Issue[] {
  return run.design.parts.flatMap((part) => {
    if (part.kind !== 'batch') return [];
    const recipe = input.recipes.findIndex((r) => r.key === part.recipe);
    return checkInputs(inputsFor(part, run, input.workshop)).map((issue) => {
      const [field = ''] = issue.path;
      const wet = field === 'lyeConcentrationPercent' ? tooWet(part, run, input, recipe) : undefined;
      if (wet !== undefined) return { ...issue, ...wet };
      return { ...issue, path: roomFields[field] ?? ['recipes', recipe, field] };
    });
  });
}

/** What makes a batter too wet whose lye by itself is not too weak: the water of its colours, or of its acids. */
function tooWet(
  part: BatchPart,
  run: ResolvedRun,
  { designs }: RunsInput,
  recipeIndex: number,
):
  | Pick<Extract<Issue, { code: 'recipe.too-wet' }>, 'code' | 'path' | 'part' | 'percent' | 'ofColours'>
  | undefined {
  const recipe = run.recipes.get(part.recipe);
  if (recipe === undefined) return undefined;
  const { batter } = partBatter(part, recipe, run.fats);
  const percent = effectiveLyePercent(batter, run.fats);
  const uncoloured = effectiveLyePercent({ ...batter, colourants: [] }, run.fats);
  const lye = effectiveLyePercent({ ...batter, colourants: [], acids: [] }, run.fats);
  const { low } = measures.lyeConcentrationPercent;
  if (percent >= low || lye < low) return undefined;
  const ofColours = uncoloured >= low;
  const design = designs.findIndex(({ key }) => key === run.design.key);
  const parts = designs[design]?.parts ?? [];
  const place = parts.findIndex(({ key }) => key === part.key);
  const field = part.portions === undefined ? 'colourants' : 'portions';
  const path = ofColours ? ['designs', design, 'parts', place, field] : ['recipes', recipeIndex, 'acids'];
  return { code: 'recipe.too-wet', path, part: part.title, percent, ofColours };
}

/** Whether `forecastClocks` can be asked: all inputs are such as a batch can have. */
function clocksCanBeRead(run: ResolvedRun, workshop: WorkshopFacts): boolean {
  return run.design.parts.every(
    (part) => part.kind === 'decor' || checkInputs(inputsFor(part, run, workshop)).length === 0,
  );
}

/** Without any lesson; none at all where the clocks cannot be read, which `checkClockInputs` tells. */
export function clocksOf(run: ResolvedRun, workshop: WorkshopFacts): Map<string, PartClocks> {
  return clocksCanBeRead(run, workshop) ? forecastClocks(run, workshop) : new Map<string, PartClocks>();
}

/** Where the clocks' quantities of the room stand in the input. */
const roomFields: Readonly<Record<string, readonly string[]>> = {
  roomTemperatureC: ['workshop', 'room', 'temperatureC'],
  roomHumidityPercent: ['workshop', 'room', 'humidityPercent'],
};
