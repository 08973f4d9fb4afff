import { useId, useRef, useState, type ReactNode } from 'react';
import { photoLimits } from '#contract';
import { serverNow } from '../api/server-time.js';
import { useDraft } from '../form/use-draft.js';
import { textAt } from '../form/values.js';
import { logEntry } from '../offline/log-queue.js';
import type { Refusal } from '../offline/queue-order.js';
import { RefusalText } from '../offline/refusal-text.js';
import type { Note, NoteEntry } from './notes-of.js';
import { useNotesWords } from './notes-words.js';
import './notes.css';
import { PhotosToSend, type PhotoChosen } from './photos-to-send.js';

/** What a note is about; neither: the run. */
export type NoteAbout = Pick<NoteEntry, 'stage' | 'about'>;

/** A quiet line that opens into a form for a note about the run, a stage or an entry. @param what it is about, to tell it from others */
export function WriteNote({
  run,
  of = {},
  what,
}: {
  readonly run: string;
  readonly of?: NoteAbout;
  readonly what: string;
}): ReactNode {
  const words = useNotesWords();
  const [isOpen, setOpen] = useState(false);
  const [told, setTold] = useState('');
  const opener = useRef<HTMLButtonElement>(null);
  return (
    <div className="note-write">
      {isOpen ? (
        <NoteForm
          run={run}
          of={of}
          onClose={(said = '') => {
            setOpen(false);
            setTold(said);
            requestAnimationFrame(() => opener.current?.focus());
          }}
        />
      ) : (
        <button
          ref={opener}
          type="button"
          className="button plain run-quiet"
          aria-label={words.writeAt(what)}
          onClick={() => {
            setTold('');
            setOpen(true);
          }}
        >
          {words.write}
        </button>
      )}
      <p role="status" className="small soft">
        {told}
      </p>
    </div>
  );
}

/** Writes a note, or corrects one. @param onClose is given what became of it, to be told */
export function NoteForm({
  run,
  of = {},
  before,
  onClose,
}: {
  readonly run: string;
  readonly of?: NoteAbout;
  /** The note that it corrects. */
  readonly before?: Note;
  readonly onClose: (said?: string) => void;
}): ReactNode {
  const words = useNotesWords();
  const id = useId();
  const name = `note.${run}.${before?.id ?? of.stage ?? of.about ?? 'run'}`;
  const draft = useDraft(name, before === undefined ? null : { content: before.entry, version: 1 });
  const [photos, setPhotos] = useState<readonly PhotoChosen[]>(before?.entry.photos ?? []);
  const [problem, setProblem] = useState<string | Refusal>();
  const [isBusy, setBusy] = useState(false);
  const text = textAt(draft.content, ['note']);
  const send = async (): Promise<void> => {
    const note = text.trim();
    if (note === '' && photos.length === 0) return setProblem(words.empty);
    const entry: NoteEntry = {
      kind: 'note',
      ...(before === undefined ? of : aboutOf(before)),
      ...(note !== '' && { note }),
      ...(photos.length > 0 && {
        photos: photos.map(({ photo, alt = '' }) => ({
          photo,
          ...(alt.trim() !== '' && { alt: alt.trim() }),
        })),
      }),
      at: before?.entry.at ?? new Date(serverNow()).toISOString(),
    };
    setBusy(true);
    try {
      const toSend = photos.flatMap(({ toSend }) => toSend ?? []);
      const outcome = await logEntry(run, entry, { ifRefused: 'hand-back', photos: toSend });
      if (outcome.status === 'refused') return setProblem(outcome.refusal);
      draft.drop();
      onClose(outcome.status === 'sent' ? words.kept : words.waiting);
    } catch {
      setProblem(words.lost);
    } finally {
      setBusy(false);
    }
  };
  return (
    <form
      className="stack tight note-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <div className="field">
        <label htmlFor={id}>{words.note}</label>
        <textarea
          id={id}
          rows={3}
          maxLength={2000}
          // It was opened by a tap, to be written in.
          autoFocus
          value={text}
          aria-invalid={problem !== undefined}
          aria-describedby={`${id}-wrong`}
          onChange={({ target }) => {
            setProblem(undefined);
            draft.change(['note'], target.value);
          }}
        />
      </div>
      <PhotosToSend chosen={photos} most={photoLimits.inNote} onChange={setPhotos} />
      <p id={`${id}-wrong`} role="alert" className="wrong">
        {typeof problem === 'string' ? problem : problem && <RefusalText refusal={problem} />}
      </p>
      <div className="row">
        <button type="submit" className="button main" disabled={isBusy}>
          {isBusy ? words.keeping : words.keep}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            draft.drop();
            onClose();
          }}
        >
          {words.cancel}
        </button>
      </div>
    </form>
  );
}

function aboutOf({ id, entry: { stage, about } }: Note): Pick<NoteEntry, 'stage' | 'about' | 'corrects'> {
  return { ...(stage !== undefined && { stage }), ...(about !== undefined && { about }), corrects: id };
}
