import { useMutation } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { useNavigate } from 'react-router';
import { logEntry } from '../offline/log-queue.js';
import { RefusalText } from '../offline/refusal-text.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { MishapForm } from './mishap-form.js';
import type { Mishap, RunProps } from './run-props.js';
import { useReplanned } from './use-run.js';

/** On the page of a run: what can be done about something that went wrong. */
export function MishapCard({ run, plan }: RunProps): ReactNode {
  const { mishap: words, log } = useWords().run;
  const navigate = useNavigate();
  const replanned = useReplanned(run.id);
  const [isOpen, setOpen] = useState(false);
  const { mutate, isPending, data, error } = useMutation({
    networkMode: 'always',
    mutationFn: (entry: Mishap) => logEntry(run.id, entry, { ifRefused: 'hand-back' }),
    onSuccess: async (outcome) => {
      if (outcome.status !== 'refused') setOpen(false);
      await replanned();
    },
  });
  const own = plan.document.runs.find((each) => each.run === run.key);
  if (own === undefined) return null;
  return (
    <>
      <details className="card" open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>
          <h2>{words.title}</h2>
        </summary>
        {isOpen && (
          <MishapForm
            run={run}
            document={plan.document}
            own={own}
            isBusy={isPending}
            onChoose={(entry) => mutate(entry)}
            onShow={(response, answer) =>
              void navigate(`/runs/${run.id}`, { state: { tried: { title: response, answer } } })
            }
          />
        )}
      </details>
      {data?.status === 'waiting' && <p className="note">{log.waiting}</p>}
      {data?.status === 'refused' && (
        <p className="note coral">
          <RefusalText refusal={data.refusal} />
        </p>
      )}
      {error !== null && <Failed error={error} />}
    </>
  );
}
