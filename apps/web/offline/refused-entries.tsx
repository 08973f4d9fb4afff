import { TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { discardEntry } from './log-queue.js';
import { ofRun, type QueuedEntry } from './queue-order.js';
import { RefusalText } from './refusal-text.js';
import { useLogQueue } from './use-log-queue.js';

/**
 * Entries of this device that Benchtide did not take, with the reason, at the place that they are about. Each is gone once the
 * user says that it was read; the list behind the pill can correct it.
 * @param stage key; absent: all entries of the run
 */
export function RefusedEntries({ run, stage }: { readonly run: string; readonly stage?: string }): ReactNode {
  const { offline } = useWords();
  const { dayTime } = useTimes();
  const refused = ofRun(useLogQueue(), run).filter(
    (queued) => queued.refusal !== undefined && (stage === undefined || isAbout(queued, stage)),
  );
  return refused.map(({ id, entry, refusal }) => (
    <div key={id} role="status" className="note coral stack tight">
      <p>
        <TriangleAlert size={18} aria-hidden /> {offline.notTakenAt(dayTime(entry.at))}{' '}
        {refusal !== undefined && <RefusalText refusal={refusal} />}
      </p>
      {entry.note !== undefined && <p className="small note-text">{entry.note}</p>}
      <p>
        <button type="button" className="button" onClick={() => void discardEntry(id)}>
          {offline.wasRead}
        </button>
      </p>
    </div>
  ));
}

function isAbout({ entry }: QueuedEntry, stage: string): boolean {
  return 'stage' in entry && entry.stage === stage;
}
