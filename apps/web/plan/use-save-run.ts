import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import { useNavigate } from 'react-router';
import type { NewRun, PlanInput } from '#contract';
import { allRuns } from '../api/all-runs.js';
import { answered, api } from '../api/client.js';
import { newId } from '../api/new-id.js';
import type { LocalTime } from './local-times.js';
import { newRunOf, type PlanDraft } from './plan-draft.js';

export interface SavingRun {
  readonly save: () => void;
  readonly isReady: boolean;
  readonly isSaving: boolean;
  readonly error: Error | null;
}

/**
 * Saves a draft as a run and goes to it.
 * @param begin counted back, where that is what was asked for
 * @param onSaved before it goes there
 */
export function useSaveRun(
  draft: PlanDraft,
  input: PlanInput,
  begin: LocalTime | null,
  onSaved: () => void,
): SavingRun {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const runs = useQuery({ queryKey: ['runs'], queryFn: allRuns });
  const once = useRef<{ readonly body: string; readonly key: string } | null>(null);
  const call = useMutation({
    mutationFn: (body: NewRun) => {
      // The same order tried again after a lost answer must not make a second run.
      const text = JSON.stringify(body);
      if (once.current?.body !== text) once.current = { body: text, key: newId() };
      const params = { header: { 'Idempotency-Key': once.current.key } };
      return answered(api.POST('/api/runs', { body, params }));
    },
    onSuccess: async ({ run }) => {
      onSaved();
      await Promise.all([
        queries.invalidateQueries({ queryKey: ['runs'] }),
        queries.invalidateQueries({ queryKey: ['nudges'] }),
      ]);
      await navigate(`/runs/${run.id}`);
    },
  });
  const body = newRunOf(draft, input, runs.data?.map(({ key }) => key) ?? [], begin);
  const isReady = body !== null && runs.data !== undefined && !call.isPending;
  return {
    isReady,
    isSaving: call.isPending,
    error: call.error,
    save: () => {
      if (isReady) call.mutate(body);
    },
  };
}
