import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { useNavigate } from 'react-router';
import { ApiError } from '../api/client.js';
import { useWords } from '../words/words.js';
import { archiveThing, type Kind, type Thing } from './shelf-calls.js';

/** Takes a thing out of use, after asking; tells what still uses it. */
export function Archive({
  kind,
  thing,
  onGone,
}: {
  readonly kind: Kind;
  readonly thing: Thing;
  readonly onGone: () => void;
}): ReactNode {
  const { library, form } = useWords();
  const [isAsking, setAsking] = useState(false);
  const navigate = useNavigate();
  const queries = useQueryClient();
  const call = useMutation({
    mutationFn: () => archiveThing(kind, thing.id, thing.version),
    onSuccess: async () => {
      onGone();
      await navigate('/makings');
      await queries.invalidateQueries({ queryKey: [kind] });
    },
  });
  return (
    <section className="stack tight archive">
      {isAsking ? (
        <div className="note amber stack tight" role="group" aria-label={library.archive}>
          <p>{library.archiveAsk(thing.content.title)}</p>
          <div className="row">
            <button
              type="button"
              className="button warn"
              autoFocus
              disabled={call.isPending}
              onClick={() => call.mutate()}
            >
              {library.archiveYes}
            </button>
            <button
              type="button"
              className="button plain"
              onClick={() => {
                call.reset();
                setAsking(false);
              }}
            >
              {form.cancel}
            </button>
          </div>
        </div>
      ) : (
        <p>
          <button type="button" className="button plain" onClick={() => setAsking(true)}>
            {library.archive}
          </button>
        </p>
      )}
      {call.error !== null && (
        <p role="alert" className="note coral">
          {call.error instanceof ApiError
            ? [call.error.problem?.title, call.error.problem?.detail].filter(Boolean).join('. ')
            : library.noAnswer}
        </p>
      )}
    </section>
  );
}
