import { useQueries, useQuery } from '@tanstack/react-query';
import type { RunPlan } from '#contract';
import { liveRuns } from '../api/all-runs.js';
import { answered, api, type Schemas } from '../api/client.js';
import { planQuery } from '../run/use-run.js';
import { firstPour } from './curing-runs.js';

/** A run that is still worked at, and of which soap is poured. */
export interface Pouring {
  readonly run: Schemas['StoredRun'];
  readonly plan: RunPlan;
  /** In milliseconds since 1970. */
  readonly pouredAt: number;
}

/** What lies on the shelf: lots, and what is poured and on its way to be one. */
export function useShelf(): {
  readonly lots: readonly Schemas['Lot'][] | undefined;
  readonly pouring: readonly Pouring[];
  /** Not all of what is being made has been looked at yet. */
  readonly isLooking: boolean;
  readonly error: Error | null;
  readonly again: () => void;
} {
  const lots = useQuery({ queryKey: ['lots'], queryFn: () => answered(api.GET('/api/lots')) });
  const runs = useQuery(liveRuns);
  const making = (runs.data ?? []).filter(({ state }) => state === 'making');
  const plans = useQueries({ queries: making.map(({ id }) => planQuery(id)) });
  const pouring = making.flatMap((run, i) => {
    const plan = plans[i]?.data?.document.runs.find((each) => each.run === run.key);
    const pouredAt = plan && firstPour(plan);
    return plan === undefined || pouredAt === undefined ? [] : [{ run, plan, pouredAt }];
  });
  const again = (): void => {
    for (const asked of [lots, runs, ...plans]) if (asked.error !== null) void asked.refetch();
  };
  return {
    lots: lots.data,
    pouring: pouring.toSorted((a, b) => a.pouredAt - b.pouredAt),
    isLooking: runs.isPending || plans.some(({ isPending }) => isPending),
    error: [lots, runs].find(({ data, error }) => data === undefined && error !== null)?.error ?? null,
    again,
  };
}
