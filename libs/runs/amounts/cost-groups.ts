import type { PartAmounts, PieceCost, RunGroup, WorkshopFacts } from '#contract';
import type { AssessedRun } from '../assessed-run.js';
import { byKey } from '../input/by-key.js';
import { piecesWith } from '../input/pieces.js';
import { isDoneFor, piecesOfStage } from '../input/stage-pieces.js';
import { handsOnMinutes } from '../log/run-progress.js';
import { attemptsThatCost, bestUnitPrice } from './cost-pieces.js';
import { materialsOf } from './materials-of.js';

/**
 * What a piece of each group costs: its share of every part that it has and of every stage that is done for it. What
 * pieces of several groups share, such as a pour, costs each of them the same. Summed over all pieces this is what the run
 * costs.
 * @param amounts of all parts, those made again twice
 * @returns nothing where all pieces are alike
 */
export function costGroups(
  assessed: AssessedRun,
  amounts: readonly PartAmounts[],
  workshop: WorkshopFacts,
): Pick<PieceCost, 'groups'> {
  const { run } = assessed;
  const { groups } = run.order;
  if (groups === undefined) return {};
  const known = byKey(workshop.materials);
  const costOf = (part: PartAmounts): number =>
    materialsOf([part]).reduce(
      (sum, { key, unit, amount }) => sum + amount * (bestUnitPrice(known.get(key), unit) ?? 0),
      0,
    );
  const materials = ({ parts }: RunGroup): number =>
    amounts
      .filter(({ part }) => parts.includes(part))
      .reduce((sum, part) => sum + costOf(part) / piecesWith(run.order, part.part), 0);
  const minutes = ({ parts }: RunGroup): number => {
    const has = new Set(parts);
    return attemptsThatCost(assessed)
      .filter(({ stage }) => isDoneFor(run.design, stage, has))
      .reduce((sum, { stage, count }) => sum + handsOnMinutes(stage, count) / piecesOfStage(run, stage), 0);
  };
  return {
    groups: groups.map((group) => {
      const { key, title, count } = group;
      const work = (minutes(group) * (workshop.hourlyRate ?? 0)) / 60;
      return { group: key, title, count, perPiece: materials(group) + work };
    }),
  };
}
