import { paceOf, type Band, type CureFit, type StateId } from '#clocks';
import { mouldOf, type CureByWeight, type Stage } from '#contract';
import type { Truncation } from '#planner';
import type { PartClocks } from './clocks/forecast-clocks.js';
import { latestAttempt, type RunProgress, type StageAttempt } from './log/run-progress.js';
import { stageKindFacts } from './input/stage-kinds.js';
import { batchOf, preparedTogether } from './input/mixed-together.js';
import { leadsTo } from './input/stage-order.js';
import { freeingStage, makingStage, sharersOf, type ResolvedRun } from './input/resolve-run.js';

/** A run and where it stands by its log. */
export interface LoggedRun {
  readonly run: ResolvedRun;
  readonly progress: RunProgress;
}

/** A run, where it stands, and how its parts are forecast. */
export interface RunState extends LoggedRun {
  readonly clocks: ReadonlyMap<string, PartClocks>;
}

/** What the weighings of a lot say of its cure. */
export interface LotCure {
  readonly told: CureByWeight;
  /** When it is cured, minutes since 1970; absent while the weighings are too few or too close to say. */
  readonly ready?: Band;
  /** Mass of one piece over the days from the start of its cure; absent while the weighings do not tell. */
  readonly fit?: CureFit;
}

/** A run on its way into the network. */
export interface AssessedRun extends RunState {
  /** What the log tells of the draws behind its clocks, by name; those of looked-at states apart. */
  readonly draws: Readonly<Record<string, Truncation>>;
  /** What weighing the lot says of its cure. */
  readonly scales: LotCure;
}

/** The name of the bench calendar in the problem. */
export const BENCH = 'bench';
/** The stage without work that stands for the cured lot. */
const READY = '=ready';

/** The planner's name for an attempt at a stage. */
export function stageId(run: string, stage: string, attempt: number): string {
  return `${run}/${stage}#${String(attempt)}`;
}

/** The planner's name for the cured lot of a run. */
export function readyId(run: string): string {
  return `${run}/${READY}#1`;
}

/** The batch that a part is made from; one that is made again counts as the same. */
export function batchNameOf(run: ResolvedRun, part: string): string {
  const found = run.parts.get(part);
  return found?.kind === 'batch' ? batchOf(found) : part;
}

/**
 * The name of the draw behind a state of a part: what varies together has the same. Parts of one batch share its luck; what
 * batches of a recipe and of the workshop share beside it is told by `sharesOf`.
 */
export function drawOf(run: ResolvedRun, part: string, state: StateId): string {
  return `${run.order.key}/${batchNameOf(run, part)}/${paceOf[state]}`;
}

/** The draw of a state that was looked at itself: of it more is known than of the others of its pace. */
export function lookedDrawOf(run: ResolvedRun, part: string, state: StateId): string {
  return `${drawOf(run, part, state)}/${state}`;
}

/**
 * Whether a stage goes when its part is dropped: the making always, the rest unless another part shares the mould,
 * which must still be unmoulded, turned and stamped.
 */
function isLeftOut({ run, progress }: LoggedRun, stage: Stage): boolean {
  if (!progress.dropped.has(stage.part)) return false;
  // A batch is prepared as long as any part comes from it, whichever its stages name.
  if (stageKindFacts[stage.kind].prepares === true) {
    const together = preparedTogether(run.design, stage.part);
    return together.every(({ key }) => progress.dropped.has(key));
  }
  const part = run.parts.get(stage.part);
  const mould = part && mouldOf(part);
  const shared =
    mould !== undefined && sharersOf(run.design, mould).some((p) => !progress.dropped.has(p.key));
  return stageKindFacts[stage.kind].makes || !shared;
}

/**
 * Whether a stage that prepares a batch, and of which the log tells nothing, must have been done: a part of the batch has
 * been made, or what comes later in its preparation is done. Not so once the batch is to be made again.
 */
function isOvertaken({ run, progress }: LoggedRun, { stage, status, attempt }: StageAttempt): boolean {
  const { design } = run;
  if (status !== 'open' || stageKindFacts[stage.kind].prepares !== true) return false;
  if (progress.attempts.every((each) => each.status !== 'done')) return false;
  const batch = new Set(preparedTogether(design, stage.part).map(({ key }) => key));
  const later = design.stages.flatMap((each) => {
    const follows = batch.has(each.part) && each !== stage && leadsTo(design, stage.key, each.key);
    return follows ? (latestAttempt(progress, each.key) ?? []) : [];
  });
  const made = later.filter((each) => stageKindFacts[each.stage.kind].makes);
  const isMade = made.some((each) => each.status === 'done');
  const isMadeAgain = made.some((each) => each.status === 'open' && each.attempt > 1);
  if (isMade && !isMadeAgain) return true;
  return later.some(
    (each) =>
      stageKindFacts[each.stage.kind].prepares === true && each.status === 'done' && each.attempt >= attempt,
  );
}

/** The attempts that the network is about: the latest at each stage, without dropped parts. */
export function liveAttempts(assessed: LoggedRun): StageAttempt[] {
  return assessed.progress.attempts.filter(
    (a) =>
      latestAttempt(assessed.progress, a.stage.key) === a &&
      (a.status === 'done' || !(isLeftOut(assessed, a.stage) || isOvertaken(assessed, a))),
  );
}

/** The attempt at the stage that makes a part; undefined where the part is dropped and was never made. */
export function makingAttempt(assessed: LoggedRun, part: string): StageAttempt | undefined {
  const making = makingStage(assessed.run.design, part);
  return making === undefined ? undefined : liveAttempts(assessed).find((a) => a.stage.key === making.key);
}

/** Where the cure of each batch part begins: at its unmoulding, or when it was made if it has no mould. */
export function cureStarts(assessed: LoggedRun): { readonly part: string; readonly attempt: StageAttempt }[] {
  const live = liveAttempts(assessed);
  return assessed.run.design.parts.flatMap((part) => {
    if (part.kind !== 'batch' || assessed.progress.dropped.has(part.key)) return [];
    const stage = freeingStage(assessed.run.design, part) ?? makingStage(assessed.run.design, part.key);
    const attempt = live.find((a) => a.stage.key === stage?.key);
    return attempt === undefined ? [] : [{ part: part.key, attempt }];
  });
}
