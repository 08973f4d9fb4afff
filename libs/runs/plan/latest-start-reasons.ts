import type { PlanDocument, StartReason } from '#contract';

/** How many weak links are told. */
const TOLD_LINKS = 2;

/** Why no start reaches the odds that are wanted, and whether an earlier one would help. */
export function reasonsOutOfReach(of: {
  readonly plan: PlanDocument;
  /** The best start. */
  readonly beginAt: string;
  readonly wantedOdds: number;
  readonly bound: number;
  readonly pace: number;
  /** Nothing can begin before this minute. */
  readonly open: number;
  /** The first start tried; null where every start would do but for the batter. */
  readonly lookedFrom: string | null;
}): StartReason[] {
  const { plan, beginAt, wantedOdds, bound, pace, open, lookedFrom } = of;
  const best = plan.odds?.soundByTheDay ?? 0;
  const limited = lookedFrom !== null && Date.parse(lookedFrom) <= open * 60_000;
  return [
    { code: 'start.out-of-reach', wanted: wantedOdds, best, at: beginAt },
    ...plan.weakLinks
      .slice(0, TOLD_LINKS)
      .map(({ share, why }): StartReason => ({ code: 'start.loses', probability: share, because: why })),
    ...limits({ pace, bound, wantedOdds }),
    ...(!limited && lookedFrom !== null ? [{ code: 'start.earlier-is-no-better' as const }] : []),
  ];
}

function limits({
  pace,
  bound,
  wantedOdds,
}: {
  readonly pace: number;
  readonly bound: number;
  readonly wantedOdds: number;
}): StartReason[] {
  if (pace < wantedOdds) return [{ code: 'start.batter-limits', probability: pace }];
  return bound < wantedOdds ? [{ code: 'start.nothing-exceeds', probability: bound }] : [];
}
