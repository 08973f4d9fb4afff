import { batchForVolume, type BatchAmounts } from '#chemistry';
import type { BatchPart, Part, PartAmounts, Recipe } from '#contract';
import { failed, normalQuantile, ok, type Issue, type Result } from '#units';
import { cautionFor } from './cautions.js';
import type { RunWorkings } from './workings.js';

/** How surely a batch is to cover every piece. */
const CERTAINTY = 0.95;
/** Density of melted melt-and-pour base, g/mL: common practice, no source; a soap and glycerol gel. */
const MELT_DENSITY = 1.05;

/**
 * How much of everything each part of a run takes.
 *
 * With n pieces of volume v, each off by a standard deviation s independently of the others, the sum is close
 * to normal with standard deviation s·v·√n; the batch is made for its 95th percentile, plus what stays in bowl,
 * bag and pipette.
 * @param counts pieces each part is made for, by part key; absent: the run's count
 */
export function sizeBatches(
  run: RunWorkings,
  counts: ReadonlyMap<string, number> = new Map(),
): Result<PartAmounts[]> {
  const amounts: PartAmounts[] = [];
  const issues: Issue[] = [];
  for (const part of run.design.parts) {
    const sized = sizePart(part, counts.get(part.key) ?? run.order.count, run);
    if (sized.ok) amounts.push(sized.value);
    else issues.push(...sized.issues);
  }
  const [first, ...rest] = issues;
  return first === undefined ? ok(amounts) : failed(first, ...rest);
}

function sizePart(part: Part, count: number, run: RunWorkings): Result<PartAmounts> {
  const base = { part: part.key, title: part.title, kind: part.kind, count, warnings: [], cautions: [] };
  switch (part.kind) {
    case 'decor': {
      const pieces = part.perPiece * count;
      return ok({ ...base, pieces, ...(part.eachG === undefined ? {} : { massG: part.eachG * pieces }) });
    }
    case 'melt-and-pour': {
      const volumeMl = surelyEnough(part.perPieceMl, part.spreadPercent, count);
      const massG = volumeMl * MELT_DENSITY + part.lossG;
      const cautions = [cautionFor('hot-base'), cautionFor('alcohol')];
      return ok({ ...base, neededMl: part.perPieceMl * count, massG, cautions });
    }
    case 'batch':
      return sizeBatchPart(part, count, run, base);
  }
}

function sizeBatchPart(
  part: BatchPart,
  count: number,
  run: RunWorkings,
  base: Omit<PartAmounts, 'neededMl'>,
): Result<PartAmounts> {
  const recipe = run.recipes.get(part.recipe);
  if (recipe === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  const inPieces = surelyEnough(part.perPieceMl, part.spreadPercent, count);
  const bare = batchForVolume(recipe, run.fats, inPieces);
  if (!bare.ok) return bare;
  const batch = batchForVolume(recipe, run.fats, inPieces + part.lossG / bare.value.densityGPerMl);
  if (!batch.ok) return batch;
  return ok({
    ...base,
    neededMl: part.perPieceMl * count,
    batch: batch.value,
    warnings: warningsOf(recipe, batch.value),
    cautions: [cautionFor('lye')],
  });
}

function surelyEnough(perPieceMl: number, spreadPercent: number, count: number): number {
  const spread = (perPieceMl * spreadPercent) / 100;
  return perPieceMl * count + normalQuantile(CERTAINTY) * spread * Math.sqrt(count);
}

/** Common practice, no source: the ranges outside which makers look twice. */
function warningsOf(recipe: Recipe, batch: BatchAmounts): string[] {
  const warnings: string[] = [];
  if (recipe.sodiumLactatePercent > 3) {
    warnings.push(
      `Sodium lactate at ${String(recipe.sodiumLactatePercent)} % of the fats makes edges brittle; 1 to 3 % is usual.`,
    );
  }
  if (recipe.lyeConcentrationPercent < 25 || recipe.lyeConcentrationPercent > 40) {
    warnings.push(
      `A lye concentration of ${String(recipe.lyeConcentrationPercent)} % is unusual; 25 to 40 % is common.`,
    );
  }
  if (recipe.superfatPercent < 2) {
    warnings.push(
      `A superfat of ${String(recipe.superfatPercent)} % leaves little room for scales that err.`,
    );
  }
  if (recipe.fragrance !== undefined && recipe.fragrance.percent > 6) {
    warnings.push(
      `Fragrance at ${String(recipe.fragrance.percent)} % of the fats is above the usual 3 to 6 %: ` +
        'check the supplier’s limit for soap.',
    );
  }
  if (batch.fatsG < 300) {
    warnings.push('Under 300 g of fats an error of 1 g of lye counts: weigh to 0.1 g.');
  }
  return warnings;
}
