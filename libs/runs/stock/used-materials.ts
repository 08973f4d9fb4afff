import type { MaterialKind, PartAmounts, StageKind } from '#contract';
import { epochMs, isoInstant, type Minute } from '#units';
import { materialsOf, summed, type MaterialUse } from '../amounts/materials-of.js';
import { liveAttempts } from '../assessed-run.js';
import type { SizedRun } from '../assess-runs.js';
import type { LogLine } from '../input/input.js';
import { preparedTogether } from '../input/mixed-together.js';
import { stageKindFacts } from '../input/stage-kinds.js';
import type { StageAttempt } from '../log/run-progress.js';

/** A material that the log of a run says is used up, for one part of one batch. */
export interface UsedMaterial extends MaterialUse {
  /** ISO 8601, UTC: when the first stage that takes it was done. */
  readonly at: string;
  /** Key and title of the run. */
  readonly run: { readonly key: string; readonly title: string };
  /** Title of the part. */
  readonly part: string;
  /** Whether the batch is not in the pieces: spoilt, given up, or it did not reach. */
  readonly isSpoilt: boolean;
}

/** What a stage that prepares a batch takes off the shelf; one that mixes takes all that is not taken by then. */
const takenBy: Readonly<Partial<Record<StageKind, readonly MaterialKind[] | 'all'>>> = {
  'make-lye': ['lye', 'water'],
  'melt-fats': ['fat'],
  'melt-base': ['base'],
  mix: 'all',
};

/**
 * What a run has used up by its log: for every batch that was made, made again or spoilt, its amounts; of one that is only
 * prepared, what its preparation takes. An entry that is taken back has used nothing.
 * @param lines of the run's log, from which it was assessed
 */
export function usedMaterials(sized: SizedRun, lines: readonly LogLine[]): UsedMaterial[] {
  const { order } = sized.assessed.run;
  const run = { key: order.key, title: order.title };
  const spoilt = sized.spoilt.map(({ attempt, amounts }) => ({
    ...{ amounts, isSpoilt: true },
    stages: roundOf(sized, amounts, attempt),
  }));
  const live = sized.amounts.map((amounts) => ({
    amounts,
    isSpoilt: false,
    stages: stagesOf(sized, amounts),
  }));
  return [...live, ...spoilt].flatMap(({ amounts, isSpoilt, stages }) =>
    materialsOf([amounts]).flatMap((use) => {
      const first = firstOf(stages.filter((each) => takes(each, use.kind)));
      if (first === undefined) return [];
      return [{ ...use, at: instantOf(first, lines), run, part: amounts.title, isSpoilt }];
    }),
  );
}

/** What a run still takes off the shelf, given what its log says was taken. */
export function neededMaterials(sized: SizedRun): MaterialUse[] {
  return summed(
    sized.amounts.flatMap((amounts) => {
      const stages = stagesOf(sized, amounts);
      return materialsOf([amounts]).filter(({ kind }) => !stages.some((each) => takes(each, kind)));
    }),
  );
}

/** Done stages that take something for a part as it is made now. */
function stagesOf(sized: SizedRun, amounts: PartAmounts): StageAttempt[] {
  const attempts = liveAttempts(sized.assessed).filter(({ stage }) => stage.part === amounts.part);
  const making = attempts.find(({ stage }) => stageKindFacts[stage.kind].makes);
  if (making !== undefined) return roundOf(sized, amounts, making);
  // What is bought and set in is made by no stage: it is taken by the first that handles it.
  return attempts.filter(({ status }) => status === 'done');
}

/** Done stages of one round of a part's batch, the making of its other parts included. */
function roundOf({ assessed }: SizedRun, { part }: PartAmounts, making: StageAttempt): StageAttempt[] {
  const batch = new Set([part, ...preparedTogether(assessed.run.design, part).map(({ key }) => key)]);
  const others = assessed.progress.attempts.filter(
    ({ stage, attempt, round, status }) =>
      batch.has(stage.part) &&
      round === making.round &&
      status !== 'open' &&
      !(stage.key === making.stage.key && attempt === making.attempt),
  );
  return making.status === 'open' ? others : [...others, making];
}

function takes({ stage }: StageAttempt, kind: MaterialKind): boolean {
  const { makes, prepares } = stageKindFacts[stage.kind];
  if (makes || kind === 'decor') return true;
  const taken = prepares === true ? takenBy[stage.kind] : undefined;
  return taken === 'all' || taken?.includes(kind) === true;
}

function firstOf(stages: readonly StageAttempt[]): (StageAttempt & { readonly endedAt: Minute }) | undefined {
  let first: (StageAttempt & { readonly endedAt: Minute }) | undefined;
  for (const stage of stages) {
    const { endedAt } = stage;
    if (endedAt !== undefined && (first === undefined || endedAt < first.endedAt))
      first = { ...stage, endedAt };
  }
  return first;
}

/** To the second where the log has it: a count may have been made in the same minute. */
function instantOf(
  { place, endedAt }: { place?: number; endedAt: Minute },
  lines: readonly LogLine[],
): string {
  const entry = place === undefined ? undefined : lines[place]?.entry;
  const told = entry === undefined ? NaN : Date.parse(entry.at);
  const isSame = told >= epochMs(endedAt) && told < epochMs((endedAt + 1) as Minute);
  return isSame ? new Date(told).toISOString() : isoInstant(endedAt);
}
