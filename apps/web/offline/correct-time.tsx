import { useId, useState, type ReactNode } from 'react';
import { instantOf, wallClock } from '../look/wall-clock.js';
import { useTimeZone } from '../session/session.js';
import { useWords } from '../words/words.js';
import { correctEntry } from './log-queue.js';
import type { QueuedEntry } from './queue-order.js';

/** Sends a refused entry again with another time, which is what is wrong with most. */
export function CorrectTime({
  queued: { id, entry },
  onClose,
}: {
  readonly queued: QueuedEntry;
  readonly onClose: () => void;
}): ReactNode {
  const { now, offline } = useWords();
  const zone = useTimeZone();
  const [text, setText] = useState(() => wallClock(Date.parse(entry.at), zone));
  const field = useId();
  const at = instantOf(text, zone);
  const save = (when: number): void => {
    const changed = { ...entry, at: new Date(when).toISOString() };
    // A beginning that was told would now be after the end.
    if (changed.kind === 'done' && changed.startedAt !== undefined && changed.startedAt > changed.at) {
      delete changed.startedAt;
    }
    onClose();
    void correctEntry(id, changed);
  };
  return (
    <form
      className="field"
      onSubmit={(event) => {
        event.preventDefault();
        if (at !== undefined) save(at);
      }}
    >
      <label htmlFor={field}>{offline.when}</label>
      <input
        id={field}
        type="datetime-local"
        value={text}
        onChange={(event) => setText(event.target.value)}
        required
      />
      <p className="row">
        <button type="submit" className="button main" disabled={at === undefined}>
          {offline.sendWith}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {now.times.cancel}
        </button>
      </p>
    </form>
  );
}
