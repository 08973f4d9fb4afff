import { expectedUse } from './expected-use.js';
import { useSurroundings } from './piece-surroundings.js';
import type { ResolvedRun } from './resolve-run.js';

/**
 * So many times above or below what was expected, a mass on the scales is more likely a slip of the keys than a piece. A
 * choice, no source: a slip of a digit is ten times off, and curing takes away a third at most.
 */
export const DOUBTFUL_TIMES = 5;

/** Grams of a fresh piece by its design, without what is bought by the piece and has no mass given. */
export function pieceGrams(run: ResolvedRun): number {
  return run.design.parts.reduce((sum, part) => {
    if (part.kind === 'decor') return sum + part.perPiece * (part.eachG ?? 0);
    const around = useSurroundings(part, run);
    return sum + expectedUse(part, around).meanMl * around.densityGPerMl;
  }, 0);
}
