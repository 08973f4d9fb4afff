import type { PartReference, ResourceReference, StageReference, Wait } from '#contract';
import type { Problem } from '#planner';
import { latestAttempt } from '../log/run-progress.js';
import { makingAttempt, type AssessedRun } from '../assessed-run.js';

/** A problem and what its names stand for. */
export interface Network {
  readonly problem: Problem;
  readonly references: NetworkReferences;
}

/** What the planner's names stand for: kept beside the problem, as names say nothing by themselves. */
export interface NetworkReferences {
  readonly stages: ReadonlyMap<string, NetworkStage>;
  readonly lags: ReadonlyMap<string, NetworkLag>;
  readonly resources: ReadonlyMap<string, ResourceReference>;
  /** For how long the maker’s hours were looked up, from the present or the last start. */
  readonly hoursAheadDays: number;
}

/** An attempt at a stage, or the cured lot of a run. */
export interface NetworkStage extends StageReference {
  readonly assessed: AssessedRun;
}

/** Why a lag is in the network, and the stages that it ties. */
export interface NetworkLag {
  readonly assessed: AssessedRun;
  readonly from: string;
  readonly to: string;
  readonly reason: LagReason;
}

export type LagReason =
  | { readonly kind: 'link'; readonly atLeastMin: number; readonly atMostMin: number | undefined }
  | { readonly kind: 'wait'; readonly wait: Wait }
  | { readonly kind: 'made' | 'cure'; readonly part: string };

/** @throws Error for a name that is not of this network */
export function stageNamed({ stages }: NetworkReferences, id: string): StageReference {
  return withoutHand(networkStage(stages, id));
}

/** @throws Error for a name that is not of this network */
export function lagNamed({ lags }: NetworkReferences, id: string): NetworkLag {
  const found = lags.get(id);
  if (found === undefined) throw new Error(`no lag is named ${id}`);
  return found;
}

/** @throws Error for a name that is not of this network */
export function resourceNamed({ resources }: NetworkReferences, id: string): ResourceReference {
  const found = resources.get(id);
  if (found === undefined) throw new Error(`no resource is named ${id}`);
  return found;
}

/** The day on whose start the run of a stage must be cured; absent: none. */
export function dayOf({ stages }: NetworkReferences, id: string): string | undefined {
  return networkStage(stages, id).assessed.run.order.readyBy;
}

function networkStage(stages: NetworkReferences['stages'], id: string): NetworkStage {
  const found = stages.get(id);
  if (found === undefined) throw new Error(`no stage is named ${id}`);
  return found;
}

function withoutHand({ assessed: _hand, ...reference }: NetworkStage): StageReference {
  return reference;
}

/** A stage of a run at its latest attempt. */
export function stageReference(assessed: AssessedRun, stage: string): StageReference {
  const title = assessed.run.stages.get(stage)?.title ?? stage;
  const attempt = latestAttempt(assessed.progress, stage)?.attempt ?? 1;
  return { run: assessed.run.order.key, stage, attempt, title };
}

/** A part of a run, as it was or will be made last. */
export function partReference(assessed: AssessedRun, part: string): PartReference {
  const title = assessed.run.parts.get(part)?.title ?? part;
  return { run: assessed.run.order.key, part, attempt: makingAttempt(assessed, part)?.attempt ?? 1, title };
}
