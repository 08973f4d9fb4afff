import { describeUse, learnUse, priorUse, weighedMl, type PieceUse } from '#chemistry';
import type { BatchPart, MeltPart, PartAmounts } from '#contract';
import { expectedUse, type UseSurroundings } from './expected-use.js';
import type { PartWeighing } from './input.js';

/** What one piece takes of a part, given what was written and what was weighed since. */
export interface LearnedUse {
  readonly use: PieceUse;
  readonly told: NonNullable<PartAmounts['perPiece']>;
}

/** @param weighings of the part's design; those of other parts do not count */
export function learnedUse(
  part: BatchPart | MeltPart,
  around: UseSurroundings,
  weighings: readonly PartWeighing[],
): LearnedUse {
  const expected = expectedUse(part, around);
  const own = weighings.filter((weighing) => weighing.part === part.key);
  const use = learnUse(
    priorUse({
      meanMl: expected.meanMl,
      spreadPercent: part.spreadPercent,
      meanUncertaintyPercent: expected.averageErrorPercent,
    }),
    own.map(({ pieces, usedG }) => ({ pieces, usedMl: weighedMl(usedG, around.densityGPerMl) })),
  );
  const { meanMl, spreadPercent, meanUncertaintyPercent } = describeUse(use);
  return {
    use,
    told: {
      meanMl,
      spreadPercent,
      averageErrorPercent: meanUncertaintyPercent,
      from: expected.from + learnedText(own),
    },
  };
}

function learnedText(weighings: readonly PartWeighing[]): string {
  if (weighings.length === 0) return '';
  const pieces = weighings.reduce((sum, weighing) => sum + weighing.pieces, 0);
  const times = weighings.length === 1 ? 'one weighing' : `${String(weighings.length)} weighings`;
  return `, and ${times} of ${String(pieces)} pieces`;
}
