import { useQuery, useQueryClient, type UseQueryResult } from '@tanstack/react-query';
import { useCallback } from 'react';
import { answered, api, type Schemas } from '../api/client.js';

export type Plan = Schemas['PlanRevision'];
export type Document = Schemas['PlanDocument'];
export type RunPlan = Schemas['RunPlan'];
export type WhatIf = Schemas['WhatIfInput'];
export type WhatIfAnswer = Schemas['WhatIfAnswer'];

/** The latest plan of a run. */
export function planQuery(id: string): {
  readonly queryKey: readonly string[];
  readonly queryFn: () => Promise<Plan>;
} {
  return {
    queryKey: ['plan', id],
    queryFn: () => answered(api.GET('/api/runs/{id}/plan', { params: { path: { id } } })),
  };
}

export function usePlan(id: string): UseQueryResult<Plan> {
  return useQuery(planQuery(id));
}

export function useRun(id: string): UseQueryResult<Schemas['StoredRun']> {
  return useQuery({
    queryKey: ['run', id],
    queryFn: () => answered(api.GET('/api/runs/{id}', { params: { path: { id } } })),
  });
}

/** Every clock of the run's parts; the plan holds only those that it waits for. */
export function useClocks(id: string): UseQueryResult<Schemas['ClocksDocument']> {
  return useQuery({
    queryKey: ['clocks', id],
    queryFn: () => answered(api.GET('/api/runs/{id}/clocks', { params: { path: { id } } })),
  });
}

export function useWorkshop(): UseQueryResult<Schemas['StoredWorkshop']> {
  return useQuery({ queryKey: ['workshop'], queryFn: () => answered(api.GET('/api/workshop')) });
}

/** The plan that there would be. Nothing is kept. @throws ApiError where it makes no sense */
export async function whatIf(id: string, wish: Partial<WhatIf>, signal?: AbortSignal): Promise<WhatIfAnswer> {
  return answered(
    api.POST('/api/runs/{id}/what-if', {
      params: { path: { id } },
      body: { entries: [], ...wish },
      ...(signal && { signal }),
    }),
  );
}

/** To be called when a plan was made: all that is told of the run is old then. */
export function useReplanned(id: string): () => Promise<void> {
  const queries = useQueryClient();
  return useCallback(async () => {
    const ofRun = ['run', 'plan', 'plans', 'tide', 'odds', 'amounts', 'clocks', 'log'].map((name) => [
      name,
      id,
    ]);
    const keys = [...ofRun, ['runs'], ['lots'], ['nudges'], ['lessons'], ['stock']];
    await Promise.all(keys.map((queryKey) => queries.invalidateQueries({ queryKey })));
  }, [id, queries]);
}
