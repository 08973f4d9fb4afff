import { useQuery, type UseQueryResult } from '@tanstack/react-query';
import { answered, api, type Schemas } from '../api/client.js';

export type BatchSheet = Schemas['AmountsDocument'];
export type BatchToMix = Schemas['BatchToMix'];
export type PartAmounts = Schemas['PartAmounts'];

/** The batch sheet of a run: what to weigh, gather and pay for. */
export function sheetQuery(id: string): {
  readonly queryKey: readonly string[];
  readonly queryFn: () => Promise<BatchSheet>;
} {
  return {
    queryKey: ['amounts', id],
    queryFn: () => answered(api.GET('/api/runs/{id}/amounts', { params: { path: { id } } })),
  };
}

export function useSheet(id: string): UseQueryResult<BatchSheet> {
  return useQuery(sheetQuery(id));
}
