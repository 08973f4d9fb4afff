import type { MishapKind, MishapResponse, SoapState, Stage } from '#contract';
import type { Minute } from '#units';
import { handsOnOf, restMinutesOf } from '../input/stage-kinds.js';

/** One try at a stage. A remade stage has a second attempt; the first stays on record. */
export interface StageAttempt {
  readonly stage: Stage;
  readonly attempt: number;
  /** Pieces it is done for. */
  readonly count: number;
  status: 'open' | 'done' | 'spoilt';
  startedAt?: Minute;
  endedAt?: Minute;
  /** Parts of one batch that are made again by the same entry are mixed again at once: its place in the log. */
  readonly round?: number;
  /** Not to be started before, for a reason in the log. */
  notBefore?: Minute;
  /** From when on the plan of that time asked for it, as far as an entry says. */
  opened?: Minute;
  /** The entry that says it is done, and its place in the log. */
  entry?: string;
  place?: number;
}

/** A stage that could not be done yet because the soap was not ready. */
export interface NotYet {
  readonly stage: string;
  readonly attempt: number;
  readonly at: Minute;
  /** From when on the plan of that time asked for it. */
  readonly opened?: Minute;
  readonly entry: string;
  /** In the log: of two looks that contradict each other the later counts. */
  readonly place: number;
}

/** A state of a part that was looked for. */
export interface Seen {
  readonly part: string;
  /** Of the stage that makes the part. */
  readonly attempt: number;
  readonly state: SoapState;
  readonly saw: 'not-yet' | 'already' | 'just-now';
  readonly at: Minute;
  /** When the state's clock started, where the log does not say otherwise. */
  readonly since?: Minute;
  readonly entry: string;
  readonly place: number;
}

/** Pieces on the scales as they were made. */
export interface PieceWeighing {
  readonly part: string;
  readonly pieces: number;
  /** All these pieces together. */
  readonly usedG: number;
  readonly at: Minute;
  readonly entry: string;
}

/** The same pieces on the scales again while they cure. */
export interface CureWeighing {
  readonly pieces: number;
  readonly massG: number;
  readonly at: Minute;
  readonly entry: string;
}

/** Where a run stands, from its bench log alone. */
export interface RunProgress {
  /** In the design's order, attempts of a stage in theirs. */
  readonly attempts: StageAttempt[];
  readonly notYet: NotYet[];
  readonly seen: Seen[];
  readonly weighed: PieceWeighing[];
  readonly weighIns: CureWeighing[];
  /** Entries that are not to teach the clocks. */
  readonly forgotten: Set<string>;
  readonly dropped: Set<string>;
  readonly mishaps: {
    readonly part: string;
    /** Of the stage that makes the part: that batch went wrong, not the one made instead. */
    readonly attempt: number;
    readonly mishap: MishapKind;
    readonly response: MishapResponse;
    /** Nothing went wrong: the part is left out so that the plan holds. */
    readonly onPurpose?: true;
    readonly at: Minute;
  }[];
}

/** The latest attempt at a stage; undefined where the stage was dropped or never existed. */
export function latestAttempt(progress: RunProgress, stage: string): StageAttempt | undefined {
  return progress.attempts.findLast((a) => a.stage.key === stage && a.status !== 'spoilt');
}

/** Hands-on minutes of a stage for a number of pieces, rounded up. */
export function handsOnMinutes(stage: Stage, count: number): number {
  const { setupMin, perPieceS } = handsOnOf(stage);
  return setupMin + Math.ceil((perPieceS * count) / 60);
}

/** Minutes from the start of a stage to its end: hands-on, or those of a rest, in which nobody is needed. */
export function stageMinutes(stage: Stage, count: number): number {
  return restMinutesOf(stage) ?? handsOnMinutes(stage, count);
}
