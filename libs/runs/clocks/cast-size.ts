import type { ClockInputs } from '#clocks';
import { mouldOf, type BatchPart } from '#contract';
import { expectedUse } from '../input/expected-use.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import { sharersOf, type ResolvedRun } from '../input/resolve-run.js';

/** How much is cast together with a part in one cavity, and how much of it one piece has; nothing for what is not cast. */
export function castSize(
  part: BatchPart,
  run: ResolvedRun,
): Partial<Pick<ClockInputs, 'castMl' | 'pieceMl'>> {
  const mould = mouldOf(part);
  if (mould === undefined) return {};
  const pieceMl = sharersOf(run.design, mould).reduce(
    (sum, each) => (each.kind === 'batch' ? sum + expectedUse(each, useSurroundings(each, run)).meanMl : sum),
    0,
  );
  return { castMl: (pieceMl * part.piecesPerCavity) / part.cavitiesPerPiece, pieceMl };
}
