import type { Material, PieceCost, WorkshopFacts } from '#contract';
import type { MaterialUse } from './materials-of.js';
import { handsOnMinutes } from './run-progress.js';
import { byKey, type RunWorkings } from './workings.js';

/** What drives a cost is told up to this many lines; the rest is small. */
const TOLD_DRIVERS = 6;

/**
 * What one piece of a run costs: everything that its batches take, reserve included, at the best price for its unit
 * among the packs, plus the hands-on minutes of all stages at the workshop's hourly rate.
 * Water costs nothing unless it has a price. What has no price is named, not guessed.
 */
export function costPieces(
  run: RunWorkings,
  uses: readonly MaterialUse[],
  workshop: WorkshopFacts,
): PieceCost {
  const { count } = run.order;
  const known = byKey(workshop.materials ?? []);
  const unpriced: string[] = [];
  const lines = uses.flatMap((use) => {
    const material = known.get(use.key);
    const title = material?.title ?? use.title;
    const unitPrice = bestUnitPrice(material, use.unit);
    if (unitPrice === undefined) {
      if (use.kind !== 'water') unpriced.push(title);
      return [];
    }
    return [{ title, perPiece: (use.amount * unitPrice) / count }];
  });
  const minutes = run.design.stages.reduce((sum, stage) => sum + handsOnMinutes(stage, count), 0);
  const rate = workshop.hourlyRate;
  if (rate === undefined) unpriced.push('Work');
  const work = (minutes * (rate ?? 0)) / 60 / count;
  const materials = lines.reduce((sum, line) => sum + line.perPiece, 0);
  const perPiece = materials + work;
  return {
    ...(workshop.currency === undefined ? {} : { currency: workshop.currency }),
    perPiece,
    materials,
    work,
    handsOnMinPerPiece: minutes / count,
    drivers: [...lines, ...(work > 0 ? [{ title: 'Work', perPiece: work }] : [])]
      .filter((line) => line.perPiece > 0)
      .sort((a, b) => b.perPiece - a.perPiece)
      .slice(0, TOLD_DRIVERS)
      .map((line) => ({ ...line, share: line.perPiece / perPiece })),
    unpriced,
  };
}

function bestUnitPrice(material: Material | undefined, unit: Material['unit']): number | undefined {
  if (material?.unit !== unit) return undefined;
  const prices = material.packs.flatMap(({ size, price }) => (price === undefined ? [] : [price / size]));
  return prices.length === 0 ? undefined : Math.min(...prices);
}
