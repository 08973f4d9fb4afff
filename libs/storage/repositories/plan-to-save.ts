import type { LogEntry, PlanCause, PlanChange, PlanDocument, RunTeachings } from '#contract';
import type { Written } from '../session.js';
import type { AnswerKey } from './idempotency.js';
import type { HeldRun } from './hold-run.js';
import type { LoggedEntry } from './log.js';
import type { DesiredNudge, ReconciledNudges } from './reconcile-nudges.js';
import type { RunState } from './runs.js';

export interface PlanRevision {
  readonly id: string;
  readonly workshopId: string;
  readonly runId: string;
  /** 1, 2, 3 … within the run. */
  readonly number: number;
  readonly madeAt: Date;
  /** What made a new plan necessary. */
  readonly cause: PlanCause;
  readonly status: PlanDocument['status'];
  readonly document: PlanDocument;
  /** What moved since the revision before. */
  readonly changes: readonly PlanChange[];
}

export interface PlanToSave {
  readonly runId: string;
  readonly madeAt: Date;
  readonly cause: PlanCause;
  /** May plan other runs as well; only the stages of this run are reminded of. */
  readonly document: Written<PlanDocument>;
  readonly changes: readonly PlanChange[];
  readonly nudges: readonly DesiredNudge[];
  /** The run as this transaction has locked it already; nothing of it has been changed since. */
  readonly held?: HeldRun;
  /** What is stored with it, in the same statement. */
  readonly along?: StoredAlong;
}

/** What belongs to the step that made a plan, and is stored with it. */
export interface StoredAlong {
  /** Appended to the run's log; the id is one of `log.nextId`. */
  readonly entry?: { readonly id: string; readonly entry: LogEntry };
  /** What the run teaches once the entry is logged. */
  readonly teaches?: { readonly basis: string; readonly teachings: RunTeachings };
  /** The run's new state, if it still has this version. */
  readonly state?: { readonly version: number; readonly state: RunState };
  /** Kept for a repeated request; the plan itself is part of the answer without being kept twice. */
  readonly answer?: AnswerKey & {
    readonly status: number;
    readonly response: (logged: LoggedEntry | null) => unknown;
  };
}

/** The new revision, and what it changed about the nudges; those in `moved` are to be queued after the commit. */
export interface SavedPlan extends ReconciledNudges {
  readonly revision: PlanRevision;
  /** The entry that was stored along; null where there was none. */
  readonly logged: LoggedEntry | null;
}
