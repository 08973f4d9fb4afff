import type { NudgeKind } from '#contract';
import type { Reader } from '#words';
import type { NudgeFacts } from './describe-nudge.js';

/** A stored nudge that has not been delivered yet. Each change of its time or of what it says raises `version`. */
export interface WaitingNudge {
  readonly id: string;
  readonly version: number;
  readonly dueAt: Date;
}

/** A nudge as the store returned it from the one claim that delivered it. */
export interface DeliveredNudge extends NudgeFacts {
  readonly id: string;
  readonly workshopId: string;
  readonly runId: string;
  readonly runTitle: string;
  /** Key of the stage it is about. */
  readonly stage: string;
  readonly attempt: number;
  readonly kind: NudgeKind;
  readonly deliveredAt: Date;
  /** Position in the inbox; later deliveries have higher ones. */
  readonly sequence: number;
}

/**
 * Where nudges are kept. The rows here are the truth; what the queue holds can be rebuilt from them.
 * Declared by the user of the store, so that this library knows nothing of the database behind it.
 */
export interface NudgeStore {
  /** Waiting nudges of all workshops with `dueAt` before the given instant, oldest first, at most `limit`. */
  due(limit: number, before: Date): Promise<readonly WaitingNudge[]>;
  /**
   * Makes nudges wait again, under a new version, that were delivered at a time well after `now`: a clock was ahead and
   * has come back.
   * @returns how many
   */
  undoEarly(now: Date): Promise<number>;
  /**
   * Marks the nudge delivered, once, however many ask at the same time.
   * @returns null when another claim was first, or it was cancelled, moved (other version), or is not due at `now`
   */
  claim(id: string, version: number, now: Date): Promise<DeliveredNudge | null>;
  /** For whom the nudges of a workshop are written that leave the program. */
  readerOf(workshopId: string): Promise<Reader>;
}
