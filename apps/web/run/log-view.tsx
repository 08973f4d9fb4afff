import { RefusedEntries } from '../offline/refused-entries.js';
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
import { NoteList, NoteView } from '../notes/note-list.js';
import { useNotes } from '../notes/use-notes.js';
import { useNotesWords } from '../notes/notes-words.js';
import { WriteNote } from '../notes/write-note.js';
import type { Note } from '../notes/notes-of.js';
import { MishapCard } from './mishap-card.js';
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
  const notes = useNotes(run.id);
  // A note about an entry stands with that entry.
  const within = new Set(notes.flatMap(({ id, entry }) => (entry.about === undefined ? [] : [id])));
  const listed = (data ?? []).filter(({ id }) => !within.has(id));
  const taken = new Set(data?.flatMap(({ entry }) => (entry.kind === 'take-back' ? [entry.entry] : [])));
  return (
    <div className="stack">
      {run.state === 'making' || run.state === 'planned' ? <MishapCard {...props} /> : null}
      <section className="stack tight">
        <h2>{words.title}</h2>
        {data === undefined &&
          (error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />)}
        <RefusedEntries run={run.id} />
        <WriteNote run={run.id} what={run.order.title} />
        <NoteList run={run.id} notes={notes.filter(({ waits }) => waits)} />
        {data?.length === 0 && <p>{words.none}</p>}
        <ol className="run-log">
          {listed.toReversed().map((logged) => (
            <li key={logged.id} className={taken.has(logged.id) ? 'taken' : ''}>
              <Entry {...{ logged, run, notes }} isTaken={taken.has(logged.id)} document={plan.document} />
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
  notes,
}: {
  readonly logged: Logged;
  readonly isTaken: boolean;
  readonly run: RunProps['run'];
  readonly document: RunProps['plan']['document'];
  readonly notes: readonly Note[];
}): ReactNode {
  const { log: words } = useWords().run;
  const { corrected } = useNotesWords();
  const { dayTime } = useTimes();
  const text = useEntryText(document, run.key)(logged.entry);
  const { id, at, loggedAt, entry } = logged;
  const note = notes.find((each) => each.id === id);
  const about = notes.filter((each) => each.entry.about === id && !each.waits);
  // A note that does not stand was taken back, or another stands for it.
  const isGone = isTaken || (entry.kind === 'note' && note === undefined);
  return (
    <div className="stack tight">
      <p>
        {isGone ? <del>{text}</del> : text}{' '}
        {isGone && <span className="soft">· {isTaken ? words.taken : corrected}</span>}
        <br />
        <span className="soft small">
          {dayTime(at)}, {words.loggedAt(dayTime(loggedAt))}
        </span>
      </p>
      {note !== undefined ? (
        <NoteView run={run.id} note={note} />
      ) : (
        entry.note !== undefined && <p className="small note-text">{entry.note}</p>
      )}
      <NoteList run={run.id} notes={about} />
      {!isTaken && entry.kind !== 'take-back' && entry.kind !== 'note' && (
        <>
          <WriteNote run={run.id} of={{ about: id }} what={text} />
          <TakeBack logged={logged} run={run.id} text={text} />
        </>
      )}
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
