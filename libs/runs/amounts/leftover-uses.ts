import { mouldOf, type BatchPart, type LeftoverUse, type MeltPart } from '#contract';
import { cavityMl } from '../input/cavity-of-mould.js';
import type { ResolvedRun } from '../input/resolve-run.js';

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
  run: ResolvedRun,
): LeftoverUse[] {
  if (leftoverG < WORTH_KEEPING_G || keepsLye(part, run)) return [];
  if (part.kind === 'melt-and-pour') return [{ code: 'leftover.melt-again' }];
  return [...smallMoulds(leftoverG / densityGPerMl, run), dough(leftoverG, run)];
}

/** Batter with more lye than its fats can take is nothing to model with. */
function keepsLye(part: BatchPart | MeltPart, run: ResolvedRun): boolean {
  return part.kind === 'batch' && (run.recipes.get(part.recipe)?.superfatPercent ?? 0) < 0;
}

function smallMoulds(leftoverMl: number, run: ResolvedRun): LeftoverUse[] {
  const taken = new Set(run.design.parts.flatMap((part) => mouldOf(part) ?? []));
  const fitting = [...run.moulds.values()]
    .filter(({ key }) => !taken.has(key))
    .map((mould) => ({ mould, cavities: Math.floor(leftoverMl / cavityMl(mould)) }))
    .filter(({ cavities }) => cavities > 0)
    .sort((a, b) => cavityMl(b.mould) - cavityMl(a.mould));
  return fitting.slice(0, 1).map(({ mould, cavities }) => ({
    code: 'leftover.fill',
    mould: mould.title,
    cavities: Math.min(cavities, mould.cavities),
  }));
}

function dough(leftoverG: number, run: ResolvedRun): LeftoverUse {
  const decor = run.design.parts.find((p) => p.kind === 'decor' && p.material !== undefined);
  if (decor?.kind !== 'decor' || decor.eachG === undefined) return { code: 'leftover.dough' };
  return { code: 'leftover.decor', decor: decor.title, pieces: Math.floor(leftoverG / decor.eachG) };
}
