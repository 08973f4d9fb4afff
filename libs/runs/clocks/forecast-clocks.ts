import {
  checkInputs,
  forecast,
  referenceInputs,
  stateIds,
  type ClockInputs,
  type Forecast,
  type StateId,
} from '#clocks';
import {
  behaviourTogether,
  effectiveLyePercent,
  fatSharePercent,
  hardFattyAcidsPercent,
  oleicPercent,
} from '#chemistry';
import type { BatchPart, Part, WorkshopFacts } from '#contract';
import type { Issue } from '#units';
import { batchCooling, coolingForecasts } from './batch-cooling.js';
import type { RunsInput } from '../input/input.js';
import { mixedTogether } from '../input/mixed-together.js';
import { partBatter } from '../input/part-batter.js';
import { stateHasClock } from '../input/states-of-parts.js';
import type { Batter, ResolvedRun } from '../input/resolve-run.js';

/** Forecasts of one part's batch, by state. */
export type PartClocks = ReadonlyMap<StateId, Forecast>;

/**
 * Forecasts every state of every part that has clocks, at this workshop's room.
 * @returns by part key; parts without clocks (decor) are absent
 */
function forecastClocks(run: ResolvedRun, workshop: WorkshopFacts): Map<string, PartClocks> {
  const clocks = new Map<string, PartClocks>();
  for (const part of run.design.parts) {
    if (part.kind === 'decor') continue;
    const inputs = inputsFor(part, run, workshop);
    const wanted = stateIds.filter((state) => stateHasClock(part.kind, state));
    const cooling = part.kind === 'batch' ? coolingForecasts(batchCooling(part, run, workshop)) : [];
    const forecasts = [...wanted.map((state) => forecast(state, inputs)), ...cooling];
    clocks.set(part.key, new Map(forecasts.map((each) => [each.state, each])));
  }
  return clocks;
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
      return { ...issue, path: roomFields[field] ?? ['recipes', recipe, field] };
    });
  });
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

/** What the clocks read for a part: of its recipe, its mould and the room. */
export function inputsFor(
  part: Exclude<Part, { kind: 'decor' }>,
  run: ResolvedRun,
  workshop: WorkshopFacts,
): ClockInputs {
  // Melt-and-pour reads nothing but the room; the rest stands at the clocks' reference point.
  if (part.kind === 'melt-and-pour') return { ...referenceInputs, ...roomOf(workshop) };
  const recipe = run.recipes.get(part.recipe);
  if (recipe === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  return batchInputs(part, recipe, run, workshop);
}

function batchInputs(
  part: BatchPart,
  recipe: Batter,
  run: ResolvedRun,
  workshop: WorkshopFacts,
): ClockInputs {
  const { fats } = run;
  const mould = part.mould === undefined ? undefined : run.moulds.get(part.mould);
  return {
    ...roomOf(workshop),
    lyeConcentrationPercent: effectiveLyePercent(partBatter(part, recipe, fats).batter, fats),
    sodiumLactatePercent: recipe.sodiumLactatePercent,
    saltPercent: recipe.saltPercent,
    sugarPercent: recipe.sugarPercent,
    hardFattyAcidsPercent: hardFattyAcidsPercent(recipe, fats),
    oleicPercent: oleicPercent(recipe, fats),
    castorPercent: fatSharePercent(recipe, fats, 'castor'),
    buttersPercent: fatSharePercent(recipe, fats, 'butter'),
    olivePomacePercent: fatSharePercent(recipe, fats, 'olive-pomace'),
    batterTemperatureC: recipe.batterTemperatureC,
    mould: mould?.kind ?? 'silicone-cavity',
    fragrance: behaviourTogether(recipe.fragrances),
    gel: recipe.gel,
    mixing: mixingOf(part, recipe, run),
  };
}

/** Nobody blends on to trace what is to be split: the blender stops once the emulsion holds, and spoons go on. */
function mixingOf(part: BatchPart, { mixing }: Batter, { design }: ResolvedRun): Batter['mixing'] {
  if (mixing !== 'blender') return mixing;
  const batch = new Set(mixedTogether(design, part.key).map(({ key }) => key));
  const isSplit =
    part.portions !== undefined ||
    batch.size > 1 ||
    design.stages.some((stage) => stage.kind === 'split' && batch.has(stage.part));
  return isSplit ? 'to-emulsion' : mixing;
}

function roomOf(workshop: WorkshopFacts): Pick<ClockInputs, 'roomTemperatureC' | 'roomHumidityPercent'> {
  return { roomTemperatureC: workshop.room.temperatureC, roomHumidityPercent: workshop.room.humidityPercent };
}
