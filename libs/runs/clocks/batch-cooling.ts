import { coolingForecast, fatsCooling, lyeCooling, meltCooling, type Cooling, type Forecast } from '#clocks';
import { batchForFats, solidFatsPercent, type BatchAmounts } from '#chemistry';
import { mouldOf, type BatchPart, type MeltPart, type WorkshopFacts } from '#contract';
import { expectedUse } from '../input/expected-use.js';
import { mixedTogether } from '../input/mixed-together.js';
import { piecesWith } from '../input/pieces.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import { preparingStage } from '../input/stage-order.js';
import type { ResolvedRun } from '../input/resolve-run.js';

/** How lye and fats of a part's batch cool, where the design has a stage in which they are made or melted. */
export interface BatchCooling {
  readonly lye?: Cooling;
  readonly fats?: Cooling;
}

/**
 * Works out how lye and fats of a batch cool. Their masses are those that all pieces are expected to take: what is made on
 * top of that changes the time by a few per cent, and its spread is far wider.
 */
export function batchCooling(part: BatchPart, run: ResolvedRun, workshop: WorkshopFacts): BatchCooling {
  const { design, order, fats } = run;
  const recipe = run.recipes.get(part.recipe);
  const made = preparingStage(design, part.key, 'make-lye');
  const melted = preparingStage(design, part.key, 'melt-fats');
  if (recipe === undefined || (made === undefined && melted === undefined)) return {};
  const sample = batchForFats(recipe, fats, 1000);
  if (!sample.ok) return {};
  const batchG = mixedTogether(design, part.key).reduce((sum, each) => {
    const around = useSurroundings(each, run);
    return sum + expectedUse(each, around).meanMl * around.densityGPerMl * piecesWith(order, each.key);
  }, 0);
  const share = batchG / sample.value.batchG;
  const { batterTemperatureC, kohSharePercent } = recipe;
  const at = { batterTemperatureC, roomTemperatureC: workshop.room.temperatureC };
  const [lyeG, fatsG] = [inJug(sample.value, 'massG') * share, sample.value.fatsG * share];
  return {
    ...(made && {
      lye: lyeCooling({ ...at, massG: lyeG, lyePercent: strengthInJug(sample.value), kohSharePercent }),
    }),
    ...(melted && {
      fats: fatsCooling({ ...at, massG: fatsG, solidPercent: solidFatsPercent(recipe, fats) }),
    }),
  };
}

/** When melted base is cool all through that is cast; what a cavity of it holds says how long that takes. */
export function meltForecasts(part: MeltPart, run: ResolvedRun, { room }: WorkshopFacts): Forecast[] {
  if (mouldOf(part) === undefined) return [];
  const { meanMl } = expectedUse(part, useSurroundings(part, run));
  const volumeMl = (meanMl * part.piecesPerCavity) / part.cavitiesPerPiece;
  return [coolingForecast('melt-firm', meltCooling({ volumeMl, roomTemperatureC: room.temperatureC }))];
}

/** Lye as it stands in its jug, liquids that it is dissolved in included, g. */
function inJug({ lyeG, liquids }: BatchAmounts, what: 'massG' | 'waterG'): number {
  return liquids.reduce((sum, { addedTo, [what]: grams }) => sum + (addedTo === 'lye' ? grams : 0), lyeG);
}

/** How strong it is there, before what goes into the batter makes it weaker: pure alkali of alkali and water, per cent. */
function strengthInJug(batch: BatchAmounts): number {
  return (100 * (batch.pureNaohG + batch.pureKohG)) / inJug(batch, 'waterG');
}

/** The forecasts that follow from it. */
export function coolingForecasts({ lye, fats }: BatchCooling): Forecast[] {
  return [
    ...(lye === undefined ? [] : [coolingForecast('lye-cool', lye)]),
    ...(fats === undefined ? [] : [coolingForecast('fats-cool', fats)]),
  ];
}
