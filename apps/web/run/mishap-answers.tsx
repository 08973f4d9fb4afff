import { useQueries } from '@tanstack/react-query';
import { useEffect, useRef, type ReactNode } from 'react';
import type { PlanDocument, RunPlan } from '#contract';
import { mishapResponses, usualResponse, type MishapResponse } from '#contract/names';
import { ApiError } from '../api/client.js';
import { Sentences } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { useErrorText } from '../shell/states.js';
import { useWords } from '../words/words.js';
import type { Mishap } from './run-props.js';
import { useOddsPair } from './use-odds.js';
import { whatIf, type WhatIfAnswer } from './use-run.js';

export interface MishapAnswersProps {
  readonly run: { readonly id: string; readonly key: string };
  /** The plan as it is. */
  readonly document: PlanDocument;
  /** The run in it. */
  readonly own: RunPlan;
  readonly mishap: Mishap;
  readonly onChoose: (entry: Mishap) => void;
  readonly isBusy?: boolean;
  /** Shows an answer on the tide chart; absent: there is none at hand. */
  readonly onShow?: (response: MishapResponse, answer: WhatIfAnswer) => void;
}

/** The answers to a mishap side by side, each with what it leads to: how many pieces, when, and how surely. */
export function MishapAnswers({ run, mishap, ...rest }: MishapAnswersProps): ReactNode {
  const { mishap: words } = useWords().run;
  const usual = usualResponse[mishap.mishap];
  const responses = mishapResponses.toSorted((a, b) => Number(b === usual) - Number(a === usual));
  const tried = useQueries({
    queries: responses.map((response) => ({
      queryKey: ['mishap-answer', run.id, mishap, response],
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        whatIf(run.id, { entries: [{ ...mishap, response }] }, signal),
      // Where there is no connection it says so at once, and logging goes on.
      networkMode: 'always' as const,
      retry: false,
      gcTime: 0,
    })),
  });
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    // They come below what was chosen, out of sight on a phone.
    place.current?.scrollIntoView({ block: 'nearest' });
  }, [mishap.mishap]);
  return (
    <section
      ref={place}
      className="stack tight"
      aria-live="polite"
      aria-busy={tried.some(({ isPending }) => isPending)}
    >
      <h3>{words.answers}</h3>
      <ul className="run-answers">
        {responses.map((response, i) => (
          <li key={response} className="note stack tight">
            <h4>
              {words.responses[response]}{' '}
              {response === usual && <span className="soft small">({words.usual})</span>}
            </h4>
            <Answer
              {...rest}
              {...{ run, mishap, response }}
              answer={tried[i]?.data}
              error={tried[i]?.error ?? undefined}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Answer({
  run,
  document,
  own,
  mishap,
  response,
  answer,
  error,
  onChoose,
  isBusy = false,
  onShow,
}: MishapAnswersProps & {
  readonly response: MishapResponse;
  readonly answer: WhatIfAnswer | undefined;
  readonly error: Error | undefined;
}): ReactNode {
  const { now, run: runWords } = useWords();
  const { mishap: words } = runWords;
  const errorText = useErrorText();
  const isImpossible = error instanceof ApiError;
  return (
    <>
      {answer !== undefined ? (
        <Outcome {...{ run, document, own, mishap, response, answer }} />
      ) : error === undefined ? (
        <p className="soft">{words.seeing}</p>
      ) : isImpossible ? (
        <p className="small">
          {words.refused} {errorText(error)}
        </p>
      ) : (
        <p className="small">{words.unseen}</p>
      )}
      {!isImpossible && (
        <p className="row">
          <button
            type="button"
            className="button warn"
            disabled={isBusy}
            aria-label={now.about(words.choose, words.responses[response])}
            onClick={() => onChoose({ ...mishap, response })}
          >
            {words.choose}
          </button>
          {onShow !== undefined && answer?.plan.status === 'planned' && (
            <button
              type="button"
              className="button plain"
              aria-label={now.about(words.show, words.responses[response])}
              onClick={() => onShow(response, answer)}
            >
              {words.show}
            </button>
          )}
        </p>
      )}
    </>
  );
}

/** What one answer leads to. */
function Outcome({
  run,
  document,
  own,
  mishap,
  response,
  answer: { plan: then, changes },
}: Pick<MishapAnswersProps, 'run' | 'document' | 'own' | 'mishap'> & {
  readonly response: MishapResponse;
  readonly answer: WhatIfAnswer;
}): ReactNode {
  const { run: runWords, now } = useWords();
  const { mishap: words, ready, odds: oddsWord, remedies } = runWords;
  const oddsPair = useOddsPair();
  const times = useTimes();
  const planned = then.runs.find((each) => each.run === run.key);
  if (then.status !== 'planned' || planned === undefined) {
    return (
      <p>
        <strong>{words.noPlan}</strong> <Sentences of={then.conflict.slice(0, 1)} />
      </p>
    );
  }
  const part = own.amounts.find((each) => each.part === mishap.part)?.title ?? '';
  const [odds, before] = oddsPair(then.odds?.soundByTheDay ?? null, document.odds?.soundByTheDay ?? null);
  const next = planned.stages.find(({ status }) => status === 'planned');
  const pieces = runWords.pieces(planned.count);
  return (
    <>
      <dl className="mishap-facts numbers">
        <Fact name={remedies.figures.pieces}>
          {response === 'drop-part' ? words.without(pieces, part) : pieces}
        </Fact>
        <Fact name={oddsWord}>
          <strong>{odds}</strong>{' '}
          <span className="soft">
            ({remedies.before}: {before})
          </span>
        </Fact>
        {planned.ready !== null && (
          <Fact name={ready}>
            {times.day(planned.ready.likely)}, {now.countOn(times.day(planned.ready.high))}
          </Fact>
        )}
        {next !== undefined && (
          <Fact name={runWords.next}>{runWords.nextAt(next.title, times.dayTime(next.startAt))}</Fact>
        )}
      </dl>
      <p className="small soft">{words.moves(changes.length)}</p>
    </>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }): ReactNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
