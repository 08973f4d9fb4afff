import { useState, type ReactNode } from 'react';
import { useTimes } from '../look/times.js';
import { Dialog } from '../shell/dialog.js';
import type { Note } from './notes-of.js';
import { useNotesWords } from './notes-words.js';
import './notes.css';
import { addressOf } from './photo-address.js';
import { shownHere } from './shrink-photo.js';

/** The photos of a note, small; a tap shows one large. */
export function Photos({ note: { entry, photos } }: { readonly note: Note }): ReactNode {
  if (entry.photos === undefined) return null;
  return (
    <ul className="note-photos">
      {entry.photos.map(({ photo, alt }) => {
        const here = photos.find(({ id }) => id === photo);
        return (
          <li key={photo}>
            <Photo src={here === undefined ? addressOf(photo) : shownHere(here)} alt={alt} at={entry.at} />
          </li>
        );
      })}
    </ul>
  );
}

function Photo({
  src,
  alt,
  at,
}: {
  readonly src: string;
  readonly alt: string | undefined;
  readonly at: string;
}): ReactNode {
  const words = useNotesWords();
  const { dayTime } = useTimes();
  const [isLarge, setLarge] = useState(false);
  const what = alt === undefined || alt === '' ? words.photoOf(dayTime(at)) : alt;
  return (
    <>
      <button
        type="button"
        className="note-photo"
        aria-label={words.large(what)}
        onClick={() => setLarge(true)}
      >
        <img src={src} alt={what} loading="lazy" width="96" height="96" />
      </button>
      {isLarge && (
        <Dialog title={what} onClose={() => setLarge(false)}>
          <img className="note-photo-large" src={src} alt={what} />
          <p>
            <button type="button" className="button" onClick={() => setLarge(false)}>
              {words.close}
            </button>
          </p>
        </Dialog>
      )}
    </>
  );
}
