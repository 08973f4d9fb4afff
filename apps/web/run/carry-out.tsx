import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { useReplanned } from './use-run.js';

/** Carries a remedy's change out. Hours and moulds are the workshop's, so what is known of them is old then too. */
export function CarryOut({
  run,
  change,
  title,
  onDone,
}: {
  /** Id of the run. */
  readonly run: string;
  readonly change: Schemas['RemedyChange'];
  readonly title: string;
  readonly onDone: () => void;
}): ReactNode {
  const { remedies: words } = useWords().run;
  const queries = useQueryClient();
  const replanned = useReplanned(run);
  const { mutate, isPending, error } = useMutation({
    mutationFn: (key: string) =>
      answered(
        api.POST('/api/runs/{id}/change', {
          params: { path: { id: run }, header: { 'Idempotency-Key': key } },
          body: { change },
        }),
      ),
    onSuccess: async () => {
      await Promise.all([
        replanned(),
        ...['workshop', 'moulds'].map((name) => queries.invalidateQueries({ queryKey: [name] })),
      ]);
      onDone();
    },
  });
  return (
    <>
      <button type="button" className="button main" disabled={isPending} onClick={() => mutate(newId())}>
        {isPending ? words.carrying : words.carry}
        <span className="visually-hidden">: {title}</span>
      </button>
      {error !== null && <Failed error={error} again={() => mutate(newId())} />}
    </>
  );
}
