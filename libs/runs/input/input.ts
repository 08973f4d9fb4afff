import type {
  Fat,
  Learned,
  LogEntry,
  Mould,
  PieceDesign,
  PlanDocument,
  Recipe,
  RunOrder,
  RunTeachings,
  WorkshopFacts,
} from '#contract';
import type { Minute } from '#units';

/** One line of a run's bench log. */
export interface LogLine {
  /** What later entries call it by; absent: its place, `#1` for the first. */
  readonly id?: string | undefined;
  readonly entry: LogEntry;
}

/** A resource that something outside these runs occupies for a while. */
export interface Busy {
  /** `hands`, `mould:KEY` or `equipment:KEY`. */
  readonly resource: string;
  readonly amount: number;
  readonly from: Minute;
  readonly to: Minute;
}

/** A run that is not planned here, with its own copy of what it refers to: what it logged teaches. */
export interface PastRun {
  readonly order: RunOrder;
  readonly design: PieceDesign;
  readonly recipes: readonly Recipe[];
  readonly fats: readonly Fat[];
  readonly moulds: readonly Mould[];
  /** The room of that time; absent: as it is now. */
  readonly room?: WorkshopFacts['room'] | undefined;
  readonly log: readonly LogLine[];
}

/** Everything a plan is made from. A run file is one, with nothing busy. */
export interface RunsInput {
  readonly workshop: WorkshopFacts;
  readonly moulds: readonly Mould[];
  /** The maker's own fats; shipped ones need no entry. */
  readonly fats: readonly Fat[];
  readonly recipes: readonly Recipe[];
  readonly designs: readonly PieceDesign[];
  readonly runs: readonly RunOrder[];
  /** In the order in which it was logged. */
  readonly log: readonly (LogLine & { readonly run: string })[];
  readonly busy?: readonly Busy[];
  /** What other runs have taught; absent: nothing. Runs of the input teach each other beside it. */
  readonly learned?: Learned;
  /** What `learned` rests on, where it is at hand: only for telling the entries behind a lesson. */
  readonly teachings?: readonly RunTeachings[];
}

/** An open stage that is tried at a start of its own. */
export interface StagePin {
  readonly run: string;
  readonly stage: string;
  readonly startAt: Minute;
}

export interface PlanOptions {
  /** The present: nothing that is not done starts before it. */
  readonly now: Minute;
  /** Same input, same seed, same plan. Default 1. */
  readonly seed?: number;
  /** Scenarios behind the odds. Default 2000. */
  readonly scenarios?: number;
  /** The plan to disturb as little as possible. */
  readonly previous?: PlanDocument | undefined;
  /**
   * Stages that the plan must have at just these starts, or be a conflict that says why not. Only the plan is bound:
   * the odds count what is done later because the soap was not ready. A stage that is done stays where it was.
   */
  readonly pins?: readonly StagePin[] | undefined;
  /** Asked now and then; the best plan so far is the answer soon after it says true. Absent: as much effort as it takes. */
  readonly stop?: (() => boolean) | undefined;
}
