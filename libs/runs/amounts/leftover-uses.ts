import type { BatchPart, MeltPart } from '#contract';
import { cavityMl } from '../input/cavity-of-mould.js';
import type { RunWorkings } from '../input/workings.js';

/** Less is not worth a bag: common practice, no source. */
const WORTH_KEEPING_G = 10;

/**
 * Where a leftover can go: small moulds, or soap dough for the decor of a later run.
 * @param leftoverG expected
 */
export function leftoverUses(
  part: BatchPart | MeltPart,
  leftoverG: number,
  densityGPerMl: number,
  run: RunWorkings,
): string[] {
  if (leftoverG < WORTH_KEEPING_G || keepsLye(part, run)) return [];
  if (part.kind === 'melt-and-pour') return ['let it set and melt it again next time'];
  return [...smallMoulds(leftoverG / densityGPerMl, run), dough(leftoverG, run)];
}

/** Batter with more lye than its fats can take is nothing to model with. */
function keepsLye(part: BatchPart | MeltPart, run: RunWorkings): boolean {
  return part.kind === 'batch' && (run.recipes.get(part.recipe)?.superfatPercent ?? 0) < 0;
}

function smallMoulds(leftoverMl: number, run: RunWorkings): string[] {
  const taken = new Set(run.design.parts.flatMap((p) => (p.kind === 'batch' ? (p.mould ?? []) : [])));
  const fitting = [...run.moulds.values()]
    .filter(({ key }) => !taken.has(key))
    .map((mould) => ({ mould, cavities: Math.floor(leftoverMl / cavityMl(mould)) }))
    .filter(({ cavities }) => cavities > 0)
    .sort((a, b) => cavityMl(b.mould) - cavityMl(a.mould));
  return fitting
    .slice(0, 1)
    .map(({ mould, cavities }) =>
      cavities === 1
        ? `it fills one cavity of “${mould.title}”`
        : `it fills ${String(Math.min(cavities, mould.cavities))} cavities of “${mould.title}”`,
    );
}

function dough(leftoverG: number, run: RunWorkings): string {
  const decor = run.design.parts.find((p) => p.kind === 'decor' && p.material !== undefined);
  if (decor?.kind !== 'decor' || decor.eachG === undefined)
    return 'keep it airtight as soap dough (gloves: it is fresh soap)';
  const pieces = Math.floor(leftoverG / decor.eachG);
  return `keep it airtight as soap dough (gloves: it is fresh soap), about ${String(pieces)} of “${decor.title}”`;
}
