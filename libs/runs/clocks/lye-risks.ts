import type { BatchPart, Risk, WorkshopFacts } from '#contract';
import type { ResolvedRun } from '../input/resolve-run.js';
import { preparingStage } from '../input/stage-order.js';
import { batchCooling } from './batch-cooling.js';

/** What is to be known of the lye of a part whose batch is mixed at a stage of its own. */
export function lyeRisks(part: BatchPart, run: ResolvedRun, workshop: WorkshopFacts): Risk[] {
  const has = (kind: 'mix' | 'make-lye'): boolean => preparingStage(run.design, part.key, kind) !== undefined;
  const { lye, fats } = batchCooling(part, run, workshop);
  const batterTemperatureC = run.recipes.get(part.recipe)?.batterTemperatureC ?? NaN;
  const roomC = workshop.room.temperatureC;
  const needsBath = lye?.inBath === true || fats?.inBath === true;
  return [
    ...(needsBath ? [{ code: 'lye.cold-bath', level: 'low', batterTemperatureC, roomC } as const] : []),
    ...(has('mix') && !has('make-lye') ? [{ code: 'lye.taken-ready', level: 'low' } as const] : []),
  ];
}
