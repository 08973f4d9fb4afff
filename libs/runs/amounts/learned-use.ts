import { describeUse, learnUse, priorUse, weighedMl, type PieceUse } from '#chemistry';
import type { BatchPart, MeltPart, PartAmounts } from '#contract';
import { expectedUse, type UseSurroundings } from '../input/expected-use.js';
import type { PartWeighing } from '../input/resolve-run.js';

/**
 * How much all pieces of one day differ from those of another, one standard deviation: a choice, no source. Without it a
 * single weighing of many pieces would claim to know the next day's as well.
 */
const DAY_PERCENT = 3;

/** Within this share an amount is still that of the same design. */
const SAME_AMOUNT = 0.1;

/** What one piece takes of a part, given what was written and what was weighed since. */
export interface LearnedUse {
  readonly use: PieceUse;
  readonly told: NonNullable<PartAmounts['perPiece']>;
}

/**
 * @param weighings of the part's design; those of other parts do not count, nor those made when a piece was expected to
 * take another amount: a changed design starts anew
 */
export function learnedUse(
  part: BatchPart | MeltPart,
  around: UseSurroundings,
  weighings: readonly PartWeighing[],
): LearnedUse {
  const expected = expectedUse(part, around);
  const own = weighings.filter(
    ({ part: key, expectedMl }) =>
      key === part.key && Math.abs(expectedMl / expected.meanMl - 1) <= SAME_AMOUNT,
  );
  const use = learnUse(
    priorUse({
      meanMl: expected.meanMl,
      spreadPercent: part.spreadPercent,
      meanUncertaintyPercent: expected.averageErrorPercent,
      dayPercent: DAY_PERCENT,
    }),
    own.map(({ pieces, usedG, times = 1, squares = 0 }) => ({
      pieces,
      times,
      usedMl: weighedMl(usedG, around.densityGPerMl),
      squares: squares / around.densityGPerMl ** 2,
    })),
  );
  const { meanMl, spreadPercent, meanUncertaintyPercent } = describeUse(use);
  return {
    use,
    told: {
      meanMl,
      spreadPercent,
      averageErrorPercent: meanUncertaintyPercent,
      from: expected.from,
      ...learnedFrom(own),
    },
  };
}

function learnedFrom(weighed: readonly PartWeighing[]): Pick<LearnedUse['told'], 'learned'> {
  if (weighed.length === 0) return {};
  const pieces = weighed.reduce((sum, weighing) => sum + weighing.pieces * (weighing.times ?? 1), 0);
  const weighings = weighed.reduce((sum, { times = 1 }) => sum + times, 0);
  return { learned: { code: 'use.learned', weighings, pieces } };
}
