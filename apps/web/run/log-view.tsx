import { RefusalText } from '../offline/refusal-text.js';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { useTimes } from '../look/times.js';
import { logEntry, type LogOutcome } from '../offline/log-queue.js';
import { Failed, Loading } from '../shell/states.js';
import { serverNow } from '../api/server-time.js';
import { useWords } from '../words/words.js';
import { useEntryText } from './entry-text.js';
import { MishapForm } from './mishap-form.js';
import type { RunProps } from './run-props.js';
import { useReplanned } from './use-run.js';

type Logged = Schemas['LoggedEntry'];

/** What was done and seen, with the way to take an entry back; and what to do when something went wrong. */
export default function LogView(props: RunProps): ReactNode {
  const { run, plan } = props;
  const { log: words } = useWords().run;
  const { data, error, refetch } = useQuery({
    queryKey: ['log', run.id],
    queryFn: () => answered(api.GET('/api/runs/{id}/log', { params: { path: { id: run.id } } })),
  });
  const taken = new Set(data?.flatMap(({ entry }) => (entry.kind === 'take-back' ? [entry.entry] : [])));
  return (
    <div className="stack">
      {run.state === 'making' || run.state === 'planned' ? <MishapForm {...props} /> : null}
      <section className="stack tight">
        <h2>{words.title}</h2>
        {data === undefined &&
          (error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />)}
        {data?.length === 0 && <p>{words.none}</p>}
        <ol className="run-log">
          {[...(data ?? [])].reverse().map((logged) => (
            <li key={logged.id} className={taken.has(logged.id) ? 'taken' : ''}>
              <Entry logged={logged} isTaken={taken.has(logged.id)} run={run} document={plan.document} />
            </li>
          ))}
        </ol>
      </section>
    </div>
  );
}

function Entry({
  logged,
  isTaken,
  run,
  document,
}: {
  readonly logged: Logged;
  readonly isTaken: boolean;
  readonly run: RunProps['run'];
  readonly document: RunProps['plan']['document'];
}): ReactNode {
  const { log: words } = useWords().run;
  const { dayTime } = useTimes();
  const text = useEntryText(document, run.key)(logged.entry);
  const { at, loggedAt, entry } = logged;
  return (
    <div className="stack tight">
      <p>
        {isTaken ? <del>{text}</del> : text} {isTaken && <span className="soft">· {words.taken}</span>}
        <br />
        <span className="soft small">
          {dayTime(at)}, {words.loggedAt(dayTime(loggedAt))}
        </span>
      </p>
      {entry.note !== undefined && <p className="small">{entry.note}</p>}
      {!isTaken && entry.kind !== 'take-back' && <TakeBack logged={logged} run={run.id} text={text} />}
    </div>
  );
}

function TakeBack({
  logged,
  run,
  text,
}: {
  readonly logged: Logged;
  readonly run: string;
  readonly text: string;
}): ReactNode {
  const { log: words } = useWords().run;
  const [asked, setAsked] = useState(false);
  const replanned = useReplanned(run);
  const { mutate, isPending, data, error } = useMutation({
    mutationFn: (): Promise<LogOutcome> =>
      logEntry(
        run,
        { kind: 'take-back', entry: logged.id, at: new Date(serverNow()).toISOString() },
        { ifRefused: 'hand-back' },
      ),
    onSuccess: replanned,
  });
  if (data?.status === 'waiting') return <p className="note small">{words.waiting}</p>;
  if (!asked) {
    return (
      <p>
        <button type="button" className="button plain run-quiet" onClick={() => setAsked(true)}>
          {words.takeBack}
          <span className="visually-hidden">: {text}</span>
        </button>
      </p>
    );
  }
  return (
    <div className="note amber stack tight">
      <p>{words.sure}</p>
      <div className="row">
        <button type="button" className="button" disabled={isPending} onClick={() => mutate()}>
          {words.yes}
        </button>
        <button type="button" className="button plain" onClick={() => setAsked(false)}>
          {words.no}
        </button>
      </div>
      {data?.status === 'refused' && (
        <p className="note coral">
          <RefusalText refusal={data.refusal} />
        </p>
      )}
      {error !== null && <Failed error={error} again={() => mutate()} />}
    </div>
  );
}
