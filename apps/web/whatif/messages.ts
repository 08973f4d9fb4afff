import type {
  LatestStartDocument,
  LogEntry,
  PlanDocument,
  PlanInput,
  RemedyChange,
  RunOrder,
} from '#contract';
import type { RecipeChange, StagePin } from '#runs';
import type { Issue } from '#units';

/** What plans are made from; the same object for as long as it is the same. */
export interface Base {
  readonly input: PlanInput;
  /** The latest plan of the run, where it is about one that there is. */
  readonly previous?: PlanDocument | undefined;
}

/** What would be different. */
export type Wish =
  | {
      /** A run that there is not yet, of a design among those of the base. */
      readonly kind: 'order';
      readonly order: RunOrder;
      /** What the run's own copies of recipes have differently. */
      readonly recipes: readonly RecipeChange[];
      /** Look for its latest start with these odds too; its day must be told. */
      readonly latestWithOdds?: number | undefined;
    }
  | {
      /** The one run of the base. */
      readonly kind: 'run';
      /** Stages at starts of their own. */
      readonly pins?: readonly StagePin[];
      /** Entries that the log might get. */
      readonly entries?: readonly LogEntry[];
      readonly change?: RemedyChange;
    };

export interface Ask {
  readonly base: Base;
  readonly wish: Wish;
  /** The present, minutes since 1970. */
  readonly nowMin: number;
}

/** A plan in all its parts, or what makes no sense about the wish. */
export type Outcome =
  | {
      readonly ok: true;
      readonly plan: PlanDocument;
      readonly latest?: Omit<LatestStartDocument, 'plan'>;
    }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** To the worker: a base once, then as many wishes about it as there are. */
export type ToWorker =
  | { readonly kind: 'base'; readonly name: number; readonly base: Base }
  | {
      readonly kind: 'ask';
      readonly base: number;
      readonly wish: Wish;
      readonly nowMin: number;
      readonly scenarios: number;
    };

/** From the worker, one for each ask, in their order. */
export type FromWorker =
  | { readonly kind: 'answer'; readonly outcome: Outcome; readonly tookMs: number }
  | { readonly kind: 'broken'; readonly message: string };
