import type {
  Fat,
  LogEntry,
  Mould,
  PieceDesign,
  PlanDocument,
  Recipe,
  RunOrder,
  WorkshopFacts,
} from '#contract';
import type { Minute } from '#units';

/** A resource that something outside these runs occupies for a while. */
export interface Busy {
  /** `hands`, `mould:KEY` or `equipment:KEY`. */
  readonly resource: string;
  readonly amount: number;
  readonly from: Minute;
  readonly to: Minute;
}

/** What pieces of a design's part took on the scales. */
export interface PartWeighing {
  readonly design: string;
  readonly part: string;
  readonly pieces: number;
  /** All these pieces together. */
  readonly usedG: number;
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
  readonly log: readonly { readonly run: string; readonly entry: LogEntry }[];
  readonly busy?: readonly Busy[];
  /** From runs that are not in this input. */
  readonly weighings?: readonly PartWeighing[];
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
}
