import { useQueries, useQuery } from '@tanstack/react-query';
import { liveRuns } from '../api/all-runs.js';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import type { Sitting } from './weeks.js';

export type OpenRun = Schemas['StoredRun'];

/** Runs of which stages are still to be done. */
export function useOpenRuns(): {
  readonly runs: readonly OpenRun[] | undefined;
  readonly error: Error | null;
} {
  const { data, error } = useQuery(liveRuns);
  return { runs: data, error };
}

/** The sittings of the plans as they are now, with the runs they are for. */
export function useSittings(): { readonly sittings: readonly Sitting[]; readonly isIncomplete: boolean } {
  const { runs = [], error } = useOpenRuns();
  const plans = useQueries({
    queries: runs.map(({ id }) => ({
      queryKey: ['plan', id],
      queryFn: () => answered(api.GET('/api/runs/{id}/plan', { params: { path: { id } } })),
    })),
  });
  const sittings = plans.flatMap(({ data }, i) =>
    (data?.document.sittings ?? []).map(({ startAt, endAt }) => ({
      title: runs[i]?.order.title ?? '',
      startAt: Date.parse(startAt),
      endAt: Date.parse(endAt),
    })),
  );
  // A run that was never planned has no sittings, which is no failure.
  const failed = plans.some(
    ({ error: each }) => each !== null && !(each instanceof ApiError && each.status === 404),
  );
  return { sittings, isIncomplete: error !== null || failed };
}
