import type { ReactNode } from 'react';
import { serverNow } from '../api/server-time.js';
import { Failed } from '../shell/states.js';
import { useLogEntry } from '../offline/use-log-entry.js';
import { useLessonsWords } from './lessons-words.js';

/** An entry that was forgotten on this page a moment ago. */
export interface JustForgotten {
  readonly runId: string;
  /** The entry that says so; taking it back lets the other teach again. */
  readonly forgetId: string;
  readonly text: string;
}

/** Says that something was forgotten, and takes that back if it was not meant. */
export function UndoNote({ forgotten }: { readonly forgotten: JustForgotten }): ReactNode {
  const lessons = useLessonsWords();
  const log = useLogEntry(forgotten.runId);
  return (
    <div className="note stack tight" role="status">
      <p>
        <span className="soft">{forgotten.text}</span>
        <br />
        {log.isSuccess ? (log.data.status === 'sent' ? lessons.undone : lessons.waiting) : lessons.forgotten}
      </p>
      {!log.isSuccess && (
        <p>
          <button
            type="button"
            className="button"
            disabled={log.isPending}
            onClick={() =>
              log.mutate({
                kind: 'take-back',
                entry: forgotten.forgetId,
                at: new Date(serverNow()).toISOString(),
              })
            }
          >
            {lessons.undo}
          </button>
        </p>
      )}
      {log.error !== null && <Failed error={log.error} again={() => log.reset()} />}
    </div>
  );
}
