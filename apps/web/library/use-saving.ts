import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Issue } from '#units';
import { ApiError, type Problem } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { issuesOf } from '../form/path-of.js';
import type { Draft } from '../form/use-draft.js';
import type { Value } from '../form/values.js';
import { createThing, replaceThing, type Kind, type Thing } from './shelf-calls.js';

export interface Saving {
  readonly save: () => Promise<void>;
  readonly isSaving: boolean;
  /** What the API has against the last try, where it names fields. */
  readonly issues: readonly Issue[];
  /** How often it was tried in vain: counts up, so that each time can be told. */
  readonly tries: number;
  /** Any other trouble. */
  readonly error: Error | null;
  /** What is stored now, where it was changed elsewhere in the meantime. */
  readonly stale: Thing | null;
  readonly resolve: (keep: 'mine' | 'theirs') => Promise<void>;
  readonly isSaved: boolean;
}

/**
 * Saves a draft through the API.
 * @param complete the content as it is sent
 * @param check what can be told to be wrong without asking the API
 */
export function useSaving(
  kind: Kind,
  id: string | undefined,
  draft: Draft,
  complete: (content: Value) => Value,
  check: (content: Value) => Promise<readonly Issue[]>,
  onCreated: (thing: Thing) => void,
): Saving {
  const queries = useQueryClient();
  const [tries, setTries] = useState(0);
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [stale, setStale] = useState<Thing | null>(null);
  // Named once for each draft: a second try after a lost answer must not make a second thing.
  const [once] = useState(() => newId());
  const call = useMutation({
    mutationFn: ({ content, version }: { readonly content: Value; readonly version: number | undefined }) =>
      id === undefined || version === undefined
        ? createThing(kind, content, once)
        : replaceThing(kind, id, version, content),
    onSuccess: (thing) => {
      queries.setQueryData<readonly Thing[]>([kind], (before = []) => [
        ...before.filter((each) => each.id !== thing.id),
        thing,
      ]);
      void queries.invalidateQueries({ queryKey: [kind] });
      setIssues([]);
      setStale(null);
      draft.drop();
      if (id === undefined) onCreated(thing);
    },
    onError: (error) => {
      const problem = error instanceof ApiError ? error.problem : undefined;
      setTries((before) => before + 1);
      setIssues(issuesOf(problem, id === undefined ? [] : ['content']));
      setStale(staleIn(problem));
    },
  });
  const send = async (version: number | undefined): Promise<void> => {
    const content = complete(draft.content);
    const found = await check(content);
    setIssues(found);
    if (found.length > 0) setTries((before) => before + 1);
    else await call.mutateAsync({ content, version }).catch(() => undefined);
  };
  return {
    save: () => send(draft.version),
    isSaving: call.isPending,
    issues,
    tries,
    error: issues.length > 0 || stale !== null ? null : call.error,
    stale,
    isSaved: call.isSuccess && !draft.isChanged,
    resolve: async (keep) => {
      if (stale === null) return;
      if (keep === 'mine') return send(stale.version);
      draft.drop();
      setStale(null);
      call.reset();
      await queries.invalidateQueries({ queryKey: [kind] });
    },
  };
}

function staleIn(problem: Problem | undefined): Thing | null {
  if (problem?.type !== 'urn:benchtide:problem:stale-version') return null;
  return (problem as { readonly current?: Thing }).current ?? null;
}
