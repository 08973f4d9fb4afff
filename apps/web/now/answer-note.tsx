import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useTimes, type Times } from '../look/times.js';
import { Sentences } from '../look/sentence.js';
import { isAskedBack } from '../offline/asked-back.js';
import { RefusalText } from '../offline/refusal-text.js';
import { useWords, type Words } from '../words/words.js';
import type { BenchRun } from './bench-view.js';
import { NextLook } from './next-look-view.js';
import type { Logged, Logging } from './use-logging.js';

/** What came of the last entry: the API's own words, what moved, and the way back. */
export function AnswerNote({
  logging,
  runs,
}: {
  readonly logging: Logging;
  readonly runs: readonly BenchRun[];
}): ReactNode {
  const { now } = useWords();
  const { last, undo, confirm, dismiss } = logging;
  const status = last?.outcome?.status;
  const canUndo = (status === 'sent' && last?.entry.kind !== 'take-back') || status === 'waiting';
  const outcome = last?.outcome;
  const isAsked = outcome?.status === 'refused' && isAskedBack(outcome.refusal.issues);
  return (
    <div className="said" role="status">
      {last !== undefined && (
        <div
          className={
            status === 'refused' || status === 'lost' ? 'note coral stack tight' : 'note stack tight'
          }
        >
          {last.entry.kind === 'not-yet' && (
            <NextLook
              logged={last}
              stage={last.entry.stage}
              bench={runs.find(({ run }) => run.id === last.runId)}
            />
          )}
          <Said logged={last} />
          {status !== undefined && (
            <p className="row">
              <button type="button" className="button main" onClick={dismiss}>
                {now.answer.ok}
              </button>
              {isAsked && (
                <button type="button" className="button" onClick={confirm}>
                  {now.answer.itWasSo}
                </button>
              )}
              {canUndo && (
                <button type="button" className="button" onClick={undo}>
                  {now.answer.undo}
                </button>
              )}
            </p>
          )}
        </div>
      )}
    </div>
  );
}

function Said({ logged: { entry, outcome } }: { readonly logged: Logged }): ReactNode {
  const { now, shell } = useWords();
  if (outcome === undefined) return <p>{now.answer.logging}</p>;
  switch (outcome.status) {
    case 'sent':
      return (
        <>
          <p>
            <Sentences of={outcome.answer.why} />
          </p>
          <Moved plan={outcome.answer.plan} isFolded={entry.kind === 'not-yet'} />
        </>
      );
    case 'waiting':
      return <p>{now.answer.waiting}</p>;
    case 'taken-back':
      return <p>{now.answer.discarded}</p>;
    case 'lost':
      return <p>{shell.noAnswer}</p>;
    case 'refused':
      return (
        <p>
          {!isAskedBack(outcome.refusal.issues) && now.answer.refused}{' '}
          <RefusalText refusal={outcome.refusal} />
        </p>
      );
  }
}

function Moved({
  plan,
  isFolded,
}: {
  readonly plan: Schemas['PlanRevision'];
  readonly isFolded: boolean;
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const moved = plan.changes.flatMap((change) => {
    const text = changeText(change, now.answer, times);
    const run = plan.document.runs.find((each) => each.run === change.run);
    // One that is left out is not in the plan; another attempt at it has the same title.
    const stage = run?.stages.find(({ key }) => key === change.stage);
    const key = `${change.run} ${change.stage} ${String(change.attempt)}`;
    return text === undefined ? [] : [{ key, text: now.answer.change(text, stage?.title ?? change.stage) }];
  });
  if (moved.length === 0) return null;
  return (
    <details open={moved.length <= 3 && !isFolded}>
      <summary>{now.answer.moved}</summary>
      <ul className="small numbers">
        {moved.map(({ key, text }) => (
          <li key={key}>{text}</li>
        ))}
      </ul>
    </details>
  );
}

function changeText(
  { change, fromAt, toAt }: Schemas['PlanChange'],
  words: Words['now']['answer'],
  times: Times,
): string | undefined {
  const [from, to] = [fromAt, toAt].map((at) => (at === null ? '' : times.dayTime(at))) as [string, string];
  switch (change) {
    case 'added':
      return words.added(to);
    case 'removed':
      return words.removed;
    case 'earlier':
      return words.earlier(from, to);
    case 'later':
      return words.later(from, to);
    case 'done':
    case 'spoilt':
      return undefined;
  }
}
