import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';

/** Gives a run up, once asked whether that is meant. */
export function GiveUp({ run }: { readonly run: Schemas['StoredRun'] }): ReactNode {
  const { giveUp } = useWords().run;
  const queries = useQueryClient();
  const [asked, setAsked] = useState(false);
  const { mutate, isPending, error } = useMutation({
    mutationFn: () => answered(api.DELETE('/api/runs/{id}', { params: { path: { id: run.id } } })),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (!asked) {
    return (
      <p>
        <button type="button" className="button plain run-quiet" onClick={() => setAsked(true)}>
          {giveUp.ask}
          <span className="visually-hidden">: {run.order.title}</span>
        </button>
      </p>
    );
  }
  return (
    <div role="alertdialog" aria-label={giveUp.sure(run.order.title)} className="note coral stack tight">
      <p>
        <strong>{giveUp.sure(run.order.title)}</strong> {giveUp.means}
      </p>
      <div className="row">
        <button type="button" className="button" autoFocus onClick={() => setAsked(false)}>
          {giveUp.no}
        </button>
        <button type="button" className="button warn" disabled={isPending} onClick={() => mutate()}>
          {giveUp.yes}
        </button>
      </div>
      {error !== null && <Failed error={error} again={() => mutate()} />}
    </div>
  );
}
