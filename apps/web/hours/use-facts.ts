import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Issue } from '#units';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import { issuesOf } from '../form/path-of.js';
import { useDraft, type Draft } from '../form/use-draft.js';
import type { Value } from '../form/values.js';

export interface FactsForm {
  readonly draft: Draft;
  readonly issues: readonly Issue[];
  readonly tries: number;
  readonly save: () => Promise<void>;
  readonly isSaving: boolean;
  readonly isSaved: boolean;
  readonly error: Error | null;
  /** What is stored now, where it was changed elsewhere in the meantime. */
  readonly stale: Schemas['StoredWorkshop'] | null;
  readonly resolve: (keep: 'mine' | 'theirs') => Promise<void>;
}

/** The facts of the workshop being edited: checked here, then replaced as a whole through the API. */
export function useFacts(stored: Schemas['StoredWorkshop']): FactsForm {
  const queries = useQueryClient();
  const base = { content: stored.facts as unknown as Value, version: stored.version };
  const draft = useDraft('workshop', base);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [tries, setTries] = useState(0);
  const [stale, setStale] = useState<Schemas['StoredWorkshop'] | null>(null);
  const call = useMutation({
    mutationFn: (version: number) => {
      const facts = draft.content as unknown as Schemas['WorkshopFactsInput'];
      return answered(api.PUT('/api/workshop', { body: { version, facts } }));
    },
    onSuccess: (saved) => {
      queries.setQueryData(['workshop'], saved);
      // The time zone stands in the session too.
      void queries.invalidateQueries({ queryKey: ['session'] });
      setStale(null);
      draft.drop();
    },
    onError: (error) => {
      const problem = error instanceof ApiError ? error.problem : undefined;
      setTries((before) => before + 1);
      setIssues(issuesOf(problem, ['facts']));
      const isStale = problem?.type === 'urn:benchtide:problem:stale-version';
      setStale(
        isStale ? ((problem as { readonly current?: Schemas['StoredWorkshop'] }).current ?? null) : null,
      );
    },
  });
  const send = async (version: number): Promise<void> => {
    const found = (await import('../library/checks.js')).issuesInFacts(draft.content);
    setIssues(found);
    if (found.length > 0) setTries((before) => before + 1);
    else await call.mutateAsync(version).catch(() => undefined);
  };
  return {
    draft,
    issues,
    tries,
    save: () => send(draft.version ?? stored.version),
    isSaving: call.isPending,
    isSaved: call.isSuccess && !draft.isChanged,
    error: issues.length > 0 || stale !== null ? null : call.error,
    stale,
    resolve: async (keep) => {
      if (stale === null) return;
      if (keep === 'mine') return send(stale.version);
      draft.drop();
      setStale(null);
      call.reset();
      await queries.invalidateQueries({ queryKey: ['workshop'] });
    },
  };
}
