import type { AmountsDocument, GatherList, PartAmounts } from '#contract';
import { ok, under, type Result } from '#units';
import { costGroups } from '../amounts/cost-groups.js';
import { costPieces } from '../amounts/cost-pieces.js';
import { gatherMaterials } from '../amounts/gather-materials.js';
import { presentGroups } from '../input/present-groups.js';
import type { RunsInput } from '../input/input.js';
import { materialsOf, type MaterialUse } from '../amounts/materials-of.js';
import { partLabels } from '../amounts/part-labels.js';
import { assessRuns, type SizedRun } from '../assess-runs.js';
import { neededMaterials } from '../stock/used-materials.js';

/**
 * The batch sheet of one or several runs: what to weigh for each part and how surely it reaches, what to gather and
 * buy for all of them together, and what a piece costs. No hours and no plan are needed.
 * @returns the sheet, or issues for input that makes no sense
 */
export function writeBatchSheet(input: RunsInput): Result<AmountsDocument> {
  const taken = assessRuns(input);
  if (!taken.ok) return taken;
  return ok({
    schema: 'benchtide.amounts/3',
    runs: taken.value.map(({ assessed, batches, amounts, spoilt }) => ({
      run: assessed.run.order.key,
      title: assessed.run.order.title,
      design: assessed.run.design.key,
      count: assessed.run.order.count,
      ...presentGroups(assessed.run),
      batches,
      amounts,
      cost: {
        ...costPieces(assessed, materialsOf([...amounts, ...spoiltAmounts(spoilt)]), input.workshop),
        ...costGroups(assessed, [...amounts, ...spoiltAmounts(spoilt)], input.workshop),
      },
      labels: partLabels(assessed.run, amounts),
      cautions: assessed.run.design.looksEdible ? [{ code: 'caution.looks-edible' }] : [],
    })),
    gather: gatherMaterials(stillNeeded(taken.value), input.workshop),
  });
}

function spoiltAmounts(spoilt: SizedRun['spoilt']): PartAmounts[] {
  return spoilt.map(({ amounts }) => amounts);
}

/**
 * What to gather for runs that each come with what they refer to.
 * @param inputs of one workshop; its facts are taken from the first
 */
export function gatherForRuns(inputs: readonly [RunsInput, ...RunsInput[]]): Result<GatherList> {
  const runs: SizedRun[] = [];
  for (const input of inputs) {
    const taken = assessRuns(input, { taught: false });
    if (!taken.ok) return { ok: false, issues: under([input.runs[0]?.key ?? 'run'], taken.issues) };
    runs.push(...taken.value);
  }
  return ok(gatherMaterials(stillNeeded(runs), inputs[0].workshop));
}

/** What was taken for a part already, also for one that is only prepared, is not needed again. */
function stillNeeded(runs: readonly SizedRun[]): Map<string, MaterialUse[]> {
  return new Map(runs.map((sized) => [sized.assessed.run.order.key, neededMaterials(sized)]));
}
