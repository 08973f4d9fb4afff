import { useId, useState, type ReactNode } from 'react';
import { useNotesWords } from './notes-words.js';
import { addressOf } from './photo-address.js';
import { shownHere, shrinkPhoto, type PhotoToSend } from './shrink-photo.js';

/** A photo of the note that is being written. */
export interface PhotoChosen {
  readonly photo: string;
  readonly alt?: string | undefined;
  /** Absent: it was sent with the note that is corrected. */
  readonly toSend?: PhotoToSend;
}

/** Photos to go with a note: taken or chosen here, each with what it shows, each to be left out again. */
export function PhotosToSend({
  chosen,
  most,
  onChange,
}: {
  readonly chosen: readonly PhotoChosen[];
  readonly most: number;
  readonly onChange: (change: (before: readonly PhotoChosen[]) => readonly PhotoChosen[]) => void;
}): ReactNode {
  const words = useNotesWords();
  const [state, setState] = useState<'ready' | 'shrinking' | { readonly wrong: string }>('ready');
  const add = async (files: readonly File[]): Promise<void> => {
    setState('shrinking');
    for (const file of files.slice(0, most - chosen.length)) {
      try {
        const toSend = await shrinkPhoto(file);
        onChange((before) => [...before, { photo: toSend.id, toSend }]);
      } catch {
        return setState({ wrong: words.unreadable(file.name) });
      }
    }
    setState(files.length > most - chosen.length ? { wrong: words.most(most) } : 'ready');
  };
  const isFull = chosen.length >= most;
  return (
    <div className="stack tight">
      {chosen.length > 0 && (
        <ul className="note-chosen">
          {chosen.map((each) => (
            <Chosen
              key={each.photo}
              chosen={each}
              onAlt={(alt) =>
                onChange((before) => before.map((one) => (one.photo === each.photo ? { ...one, alt } : one)))
              }
              onLeaveOut={() => onChange((before) => before.filter(({ photo }) => photo !== each.photo))}
            />
          ))}
        </ul>
      )}
      <div className="row">
        <FileButton label={words.takePhoto} isCamera disabled={isFull} onFiles={(files) => void add(files)} />
        <FileButton label={words.choosePhoto} disabled={isFull} onFiles={(files) => void add(files)} />
      </div>
      <p className="soft small" role="status">
        {state === 'shrinking' ? words.shrinking : isFull ? words.most(most) : words.photoHow}
      </p>
      {typeof state === 'object' && (
        <p className="wrong" role="alert">
          {state.wrong}
        </p>
      )}
    </div>
  );
}

function Chosen({
  chosen: { photo, alt = '', toSend },
  onAlt,
  onLeaveOut,
}: {
  readonly chosen: PhotoChosen;
  readonly onAlt: (alt: string) => void;
  readonly onLeaveOut: () => void;
}): ReactNode {
  const words = useNotesWords();
  const id = useId();
  return (
    <li className="row">
      <img
        src={toSend === undefined ? addressOf(photo) : shownHere(toSend)}
        alt={alt}
        width="96"
        height="96"
      />
      <div className="field">
        <label htmlFor={id}>{words.alt}</label>
        <input id={id} value={alt} maxLength={300} onChange={({ target }) => onAlt(target.value)} />
      </div>
      <button type="button" className="button plain" onClick={onLeaveOut}>
        {words.leaveOut}
      </button>
    </li>
  );
}

/** A button that is a field for files. @param isCamera asks a phone for its camera at once */
function FileButton({
  label,
  isCamera = false,
  disabled,
  onFiles,
}: {
  readonly label: string;
  readonly isCamera?: boolean;
  readonly disabled: boolean;
  readonly onFiles: (files: readonly File[]) => void;
}): ReactNode {
  return (
    <label className={`button note-file${isCamera ? ' camera' : ''}`} data-disabled={disabled}>
      <input
        type="file"
        accept="image/*"
        {...(isCamera ? { capture: 'environment' as const } : { multiple: true })}
        className="visually-hidden"
        disabled={disabled}
        onChange={({ target }) => {
          onFiles([...(target.files ?? [])]);
          // The same file can be chosen once more after it was left out.
          target.value = '';
        }}
      />
      {label}
    </label>
  );
}
