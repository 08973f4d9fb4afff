import type { CostItem, Material, PieceCost, WorkshopFacts } from '#contract';
import { byKey } from '../input/by-key.js';
import { summed, type MaterialUse } from './materials-of.js';
import { liveAttempts, type AssessedRun } from '../assessed-run.js';
import { handsOnMinutes, type StageAttempt } from '../log/run-progress.js';

/** What drives a cost is told up to this many lines; the rest is small. */
const TOLD_DRIVERS = 6;
const work: CostItem = { code: 'cost.work' };

/**
 * What one piece of a run costs: everything that its batches take, reserve and spoilt batches included, at the best price
 * for its unit among the packs, plus the hands-on minutes of all that is or will be done at the workshop's hourly rate.
 * Water costs nothing unless it has a price. What has no price is named, not guessed.
 * @param uses materials of every batch of the run, those made again twice
 */
export function costPieces(
  assessed: AssessedRun,
  uses: readonly MaterialUse[],
  workshop: WorkshopFacts,
): PieceCost {
  const { count } = assessed.run.order;
  const known = byKey(workshop.materials);
  const unpriced: CostItem[] = [];
  const lines = summed(uses).flatMap((use) => {
    const material = known.get(use.key);
    const what: CostItem = { code: 'cost.material', key: use.key, title: material?.title ?? use.title };
    const unitPrice = bestUnitPrice(material, use.unit);
    if (unitPrice === undefined) {
      if (use.kind !== 'water') unpriced.push(what);
      return [];
    }
    return [{ what, perPiece: (use.amount * unitPrice) / count }];
  });
  const minutes = minutesOf(assessed);
  const rate = workshop.hourlyRate;
  if (rate === undefined) unpriced.push(work);
  const paid = (minutes * (rate ?? 0)) / 60 / count;
  const materials = lines.reduce((sum, line) => sum + line.perPiece, 0);
  const perPiece = materials + paid;
  return {
    ...(workshop.currency === undefined ? {} : { currency: workshop.currency }),
    perPiece,
    complete: unpriced.length === 0,
    materials,
    work: paid,
    handsOnMinPerPiece: minutes / count,
    drivers: [...lines, ...(paid > 0 ? [{ what: work, perPiece: paid }] : [])]
      .filter((line) => line.perPiece > 0)
      .sort((a, b) => b.perPiece - a.perPiece)
      .slice(0, TOLD_DRIVERS)
      .map((line) => ({ ...line, share: line.perPiece / perPiece })),
    unpriced,
  };
}

function minutesOf(assessed: AssessedRun): number {
  return attemptsThatCost(assessed).reduce((sum, { stage, count }) => sum + handsOnMinutes(stage, count), 0);
}

/** What was done, spoilt or not, and what is still to be done. */
export function attemptsThatCost(assessed: AssessedRun): StageAttempt[] {
  const live = new Set(liveAttempts(assessed));
  return assessed.progress.attempts.filter((attempt) => live.has(attempt) || attempt.status !== 'open');
}

/** The best price for a unit among the packs of a material. @returns undefined where none is known */
export function bestUnitPrice(material: Material | undefined, unit: Material['unit']): number | undefined {
  if (material?.unit !== unit) return undefined;
  const prices = material.packs.flatMap(({ size, price }) => (price === undefined ? [] : [price / size]));
  return prices.length === 0 ? undefined : Math.min(...prices);
}
