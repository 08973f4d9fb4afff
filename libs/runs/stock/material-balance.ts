import type { StockMove } from '#contract';

/** What was there before any entry. */
export interface OpeningStock {
  readonly amount: number;
  /** ISO 8601; uses before it are in the amount already. Absent: before everything. */
  readonly at?: string | undefined;
}

/** How much there is of one material, and what that follows from; amounts in its unit. */
export interface MaterialBalance {
  /** Below 0 where more was used than was entered. */
  readonly onHand: number;
  /** The latest count, or the opening stock where nothing was counted; absent: neither. */
  readonly from?: { readonly amount: number; readonly at?: string };
  readonly bought: number;
  readonly usedByRuns: number;
  readonly usedElse: number;
  readonly fromLeftovers: number;
}

/**
 * Stock = the latest count + what came after it − what was used after it. Moves are told apart by when they happened, so
 * their order does not matter; what happened at the very moment of the count is in the count. Of two counts at one moment
 * the later in the list stands.
 */
export function materialBalance(
  moves: readonly Pick<StockMove, 'kind' | 'at' | 'amount'>[],
  opening?: OpeningStock,
): MaterialBalance {
  let from: { amount: number; at?: string } | undefined =
    opening === undefined
      ? undefined
      : { amount: opening.amount, ...(opening.at !== undefined && { at: opening.at }) };
  let since = from?.at === undefined ? -Infinity : Date.parse(from.at);
  let isCounted = false;
  for (const { kind, at, amount } of moves) {
    if (kind !== 'count' || (isCounted && Date.parse(at) < since)) continue;
    from = { amount, at };
    since = Date.parse(at);
    isCounted = true;
  }
  const sums = { bought: 0, usedByRuns: 0, usedElse: 0, fromLeftovers: 0 };
  for (const { kind, at, amount } of moves) {
    // What was bought before the workshop was set up was entered since, so it is not in what it began with.
    if (Date.parse(at) <= since && (isCounted || amount < 0)) continue;
    if (kind === 'purchase') sums.bought += amount;
    else if (kind === 'leftover-used') sums.fromLeftovers += amount;
    else if (kind === 'made' || kind === 'spoilt') sums.usedByRuns -= amount;
    else if (kind === 'used' || kind === 'written-off') sums.usedElse -= amount;
  }
  const { bought, usedByRuns, usedElse, fromLeftovers } = sums;
  const onHand = (from?.amount ?? 0) + bought + fromLeftovers - usedByRuns - usedElse;
  return { onHand, ...(from !== undefined && { from }), ...sums };
}
