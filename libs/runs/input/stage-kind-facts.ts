import type { WayOfWorking } from '#clocks';
import type { CautionCode, ClosingState, LateLoss, OpeningState, StageKind } from '#contract';
import type { Evidence } from '#units';

/** How a part was made and where it is when a stage comes to it. */
export type PartCondition =
  | 'in-mould'
  | 'out-of-mould'
  | 'without-mould'
  | 'dipped'
  | 'piped'
  | 'melted'
  | 'melt-in-mould'
  | 'melt-out-of-mould'
  | 'decor';

/** What a stage waits for, or must come before, of a part; and what coming after that loses. */
export type StateWait = { readonly opens?: OpeningState } & (
  | { readonly closes: ClosingState; readonly loses: LateLoss }
  | { readonly closes?: never; readonly loses?: never }
);

/** What a kind of stage asks of the soap, by how the part was made and where it is; nothing where nothing is said. */
export interface KindWait {
  /**
   * Whose states count: `cavity`, of all that was cast together with the part that is handled; `host`, of what that part
   * is put onto or into; `piece`, of all that is on the piece by then; `own`, of the part alone.
   */
  readonly of: 'cavity' | 'host' | 'piece' | 'own';
  readonly states: Readonly<Partial<Record<PartCondition, StateWait>>>;
  /** Asks nothing of what was cooked until its lye was used up. */
  readonly unlessCooked?: true;
  readonly evidence: Evidence;
}

/** What is asked of soap in a condition; nothing where nothing is said. */
export function statesOf(
  waits: KindWait | undefined,
  condition: PartCondition | undefined,
): Pick<StateWait, 'opens' | 'closes'> {
  return condition === undefined ? {} : (waits?.states[condition] ?? {});
}

/**
 * Kinds of stages that come first if there are any: of what was cast with the part itself, or with what it is put onto, of
 * what is prepared with it, of all that is on the piece, or of what was cast with a part that is itself set into another.
 */
export interface KindOrder {
  readonly of: 'cavity' | 'host' | 'batch' | 'piece' | 'embed';
  readonly kinds: readonly StageKind[];
  /** Not so for what was cooked. */
  readonly unlessCooked?: true;
}

/** What was done has to set or dry before the piece is handled in these ways, if that is to be done later. */
export interface Settling {
  readonly before: readonly StageKind[];
  readonly leastMin: number;
  readonly evidence: Evidence;
}

/** What a kind of stage asks of what is still in jug, pot or bowl, if the design has the stage that it counts from. */
export type BatchWait = StateWait & {
  readonly from: 'make-lye' | 'melt-fats' | 'mix' | 'cook';
  readonly evidence: Evidence;
};

/** Time at the bench, as a maker would enter it. */
export interface HandsOn {
  /** However many pieces. */
  readonly setupMin: number;
  readonly perPieceS: number;
}

/** What the planner and the maker need to know of a kind of stage. */
export interface StageKindFacts {
  /** It turns a recipe, melt-and-pour base or dough into its part; the part's clocks start at its end. */
  readonly makes: boolean;
  /**
   * What is lost where it comes later than its batter allows, or than a wait or a link of the design does that no row here
   * speaks of. Common practice, no source.
   */
  readonly loses: LateLoss;
  /** It frees the mould that holds its part. */
  readonly frees: boolean;
  /** It is done for a whole batch, before any part of it is made. */
  readonly prepares?: true;
  /** It takes time, and nobody's: minutes where the design does not say how many. Common practice, no source. */
  readonly restMin?: number;
  /** How its batter is brought into or onto the pieces, which says how thick that may be. */
  readonly fills?: WayOfWorking;
  /** What it usually takes where the design does not say. Common practice, no source: for two dozen pieces by one maker. */
  readonly handsOn: HandsOn;
  /** What it makes is put onto or into another part. */
  readonly hosted?: true;
  readonly after?: readonly KindOrder[];
  readonly waits?: KindWait;
  readonly batch?: readonly BatchWait[];
  /** What it asks of a part that was made before and is itself set into another. */
  readonly embed?: KindWait;
  readonly settles?: readonly Settling[];
  /** Shown at every stage of the kind. */
  readonly cautions: readonly CautionCode[];
}

/** What makers do and tell each other, with no source to name. */
export const commonPractice: Evidence = { kind: 'common practice' };

/** @param setupMin whatever the count @param perPieceS for each piece, seconds */
export const hands = (setupMin: number, perPieceS: number): HandsOn => ({ setupMin, perPieceS });
