import { useQueryClient } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useTimes } from '../look/times.js';
import { Confirm } from '../shell/confirm.js';
import { Dialog } from '../shell/dialog.js';
import { useWords, type Words } from '../words/words.js';
import { confirmedEntry, isAskedBack } from './asked-back.js';
import { CorrectTime } from './correct-time.js';
import { correctEntry, discardEntry, sendWaiting } from './log-queue.js';
import type { QueuedEntry } from './queue-order.js';
import { RefusalText } from './refusal-text.js';
import { useLogQueue } from './use-log-queue.js';

/** All that is not with the API yet, and a choice about what it refused. */
export function QueueDialog({ onClose }: { readonly onClose: () => void }): ReactNode {
  const { offline } = useWords();
  const queue = useLogQueue();
  return (
    <Dialog title={offline.title} onClose={onClose}>
      <p>{queue.length === 0 ? offline.empty : offline.intro}</p>
      <ol className="queue">
        {queue.map((queued) => (
          <Queued key={queued.id} queued={queued} queue={queue} />
        ))}
      </ol>
      <p className="row">
        {queue.some(({ refusal }) => refusal === undefined) && (
          <button type="button" className="button main" onClick={() => void sendWaiting()}>
            {offline.sendNow}
          </button>
        )}
        <button type="button" className="button" onClick={onClose}>
          {offline.close}
        </button>
      </p>
    </Dialog>
  );
}

function Queued({
  queued,
  queue,
}: {
  readonly queued: QueuedEntry;
  readonly queue: readonly QueuedEntry[];
}): ReactNode {
  const { offline, now } = useWords();
  const times = useTimes();
  const plan = useQueryClient().getQueryData<Schemas['PlanRevision']>(['plan', queued.runId]);
  const [isCorrecting, setCorrecting] = useState(false);
  const { id, entry, refusal, runId, place } = queued;
  const isHeld = queue.some((other) => other.refusal && other.runId === runId && other.place < place);
  const isAsked = isAskedBack(refusal?.issues);
  const title = entryText(entry, plan?.document, offline);
  return (
    <li className={refusal === undefined ? '' : 'wrong'}>
      <p>
        <strong>{title}</strong>{' '}
        <span className="small soft numbers">
          {offline.about(plan?.document.runs[0]?.title ?? '', times.dayTime(entry.at))}:{' '}
          {refusal !== undefined ? offline.notTaken : isHeld ? offline.held : offline.waits}
        </span>
      </p>
      {refusal !== undefined && (
        <>
          <p className="small">
            <RefusalText refusal={refusal} />
          </p>
          {isCorrecting && <CorrectTime queued={queued} onClose={() => setCorrecting(false)} />}
        </>
      )}
      <p className="row">
        {refusal !== undefined && (
          <>
            <button
              type="button"
              className="button"
              onClick={() => void correctEntry(id, isAsked ? confirmedEntry(entry) : entry)}
            >
              {isAsked ? now.answer.itWasSo : offline.tryAgain}
            </button>
            <button type="button" className="button" onClick={() => setCorrecting(true)}>
              {offline.correct}
            </button>
          </>
        )}
      </p>
      <Confirm
        label={offline.discard}
        name={`${offline.discard}: ${title}`}
        ask={title}
        yes={offline.reallyDiscard}
        no={offline.keep}
        onYes={() => void discardEntry(id)}
      />
    </li>
  );
}

function entryText(
  entry: QueuedEntry['entry'],
  document: Schemas['PlanDocument'] | undefined,
  { entry: words }: Words['offline'],
): string {
  const [run] = document?.runs ?? [];
  const stage = (key: string): string => run?.stages.find((each) => each.key === key)?.title ?? key;
  const part = (key: string): string => run?.amounts.find((each) => each.part === key)?.title ?? key;
  if (entry.kind === 'done') return words.done(stage(entry.stage));
  if (entry.kind === 'not-yet') return words.notYet(stage(entry.stage));
  if (entry.kind === 'mishap') return words.mishap(part(entry.part));
  return entry.kind === 'take-back' ? words.takeBack : words.other;
}
