import {
  closingStatesOf,
  openingStatesOf,
  partKinds,
  type ClosingState,
  type OpeningState,
} from '#contract/names';

/** States of a kind of part that a stage can wait for, and those before which it must have begun; none for no kind. */
export function statesOf(partKind: unknown): {
  readonly opening: readonly OpeningState[];
  readonly closing: readonly ClosingState[];
} {
  const kind = partKinds.find((each) => each === partKind) ?? 'decor';
  return { opening: openingStatesOf[kind], closing: closingStatesOf[kind] };
}
