import { useState, type ReactNode } from 'react';
import { useTimes } from '../look/times.js';
import { serverNow } from '../api/server-time.js';
import { discardEntry, logEntry } from '../offline/log-queue.js';
import { Confirm } from '../shell/confirm.js';
import type { Note } from './notes-of.js';
import { useNotesWords } from './notes-words.js';
import './notes.css';
import { Photos } from './photo-view.js';
import { NoteForm } from './write-note.js';

/** Notes with their photos, each to be corrected or taken back. */
export function NoteList({
  run,
  notes,
}: {
  readonly run: string;
  readonly notes: readonly Note[];
}): ReactNode {
  if (notes.length === 0) return null;
  return (
    <ul className="note-list">
      {notes.map((note) => (
        <li key={note.id}>
          <NoteView run={run} note={note} />
        </li>
      ))}
    </ul>
  );
}

/** A note as it stands. */
export function NoteView({ run, note }: { readonly run: string; readonly note: Note }): ReactNode {
  const words = useNotesWords();
  const { dayTime } = useTimes();
  const [isCorrecting, setCorrecting] = useState(false);
  const { id, entry, waits } = note;
  const text = entry.note ?? words.photoOf(dayTime(entry.at));
  if (isCorrecting) return <NoteForm run={run} before={note} onClose={() => setCorrecting(false)} />;
  return (
    <div className="stack tight">
      {entry.note !== undefined && <p className="note-text">{entry.note}</p>}
      <Photos note={note} />
      <p className="soft small">
        {dayTime(entry.at)}
        {waits && ` · ${words.waits}`}
      </p>
      <div className="row note-acts">
        {!waits && (
          <button
            type="button"
            className="button plain run-quiet"
            aria-label={words.correctThis(text)}
            onClick={() => setCorrecting(true)}
          >
            {words.correct}
          </button>
        )}
        <Confirm
          label={words.takeBack}
          name={words.takeBackThis(text)}
          ask={words.takeBackAsk}
          yes={words.takeBackYes}
          no={words.takeBackNo}
          className="button plain run-quiet"
          onYes={() => void (waits ? discardEntry(id) : takeBack(run, id))}
        />
      </div>
    </div>
  );
}

async function takeBack(run: string, entry: string): Promise<void> {
  await logEntry(run, { kind: 'take-back', entry, at: new Date(serverNow()).toISOString() });
}
