import { RefusalText } from '../offline/refusal-text.js';
import { useMutation } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useNavigate } from 'react-router';
import { Sentences } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { logEntry } from '../offline/log-queue.js';
import { Failed, useErrorText } from '../shell/states.js';
import { useWords } from '../words/words.js';
import type { Mishap, RunProps } from './run-props.js';
import { useOddsPair } from './use-odds.js';
import { useReplanned, type WhatIfAnswer } from './use-run.js';

/** One answer to a mishap and what it would do, or why it is none. */
export interface MishapAnswer {
  readonly entry: Mishap;
  readonly response: NonNullable<Mishap['response']>;
  readonly answer?: WhatIfAnswer;
  readonly error?: Error;
}

/** The answers side by side, each with the odds and the day it leads to. */
export function MishapAnswers({
  run,
  plan,
  answers,
  onLogged,
}: RunProps & { readonly answers: readonly MishapAnswer[]; readonly onLogged: () => void }): ReactNode {
  const { mishap: words, log } = useWords().run;
  const replanned = useReplanned(run.id);
  const { mutate, isPending, data, error } = useMutation({
    mutationFn: (entry: Mishap) => logEntry(run.id, entry, { ifRefused: 'hand-back' }),
    onSuccess: async (outcome) => {
      await replanned();
      if (outcome.status === 'sent') onLogged();
    },
  });
  return (
    <div className="stack tight" aria-live="polite">
      <ul className="run-answers">
        {answers.map((each) => (
          <li key={each.response} className="note stack tight">
            <h3>{words.responses[each.response]}</h3>
            <Answer of={each} run={run} plan={plan} />
            {each.answer !== undefined && (
              <p>
                <button
                  type="button"
                  className="button"
                  disabled={isPending}
                  onClick={() => mutate(each.entry)}
                >
                  {words.choose}
                  <span className="visually-hidden">: {words.responses[each.response]}</span>
                </button>
              </p>
            )}
          </li>
        ))}
      </ul>
      {data?.status === 'waiting' && <p className="note">{log.waiting}</p>}
      {data?.status === 'refused' && (
        <p className="note coral">
          <RefusalText refusal={data.refusal} />
        </p>
      )}
      {error !== null && <Failed error={error} />}
    </div>
  );
}

function Answer({ of, run, plan }: RunProps & { readonly of: MishapAnswer }): ReactNode {
  const { mishap: words, ready, odds: oddsWord, remedies } = useWords().run;
  const oddsPair = useOddsPair();
  const errorText = useErrorText();
  const { day } = useTimes();
  const navigate = useNavigate();
  const { answer, error, response } = of;
  if (answer === undefined) return <p className="note amber small">{error && errorText(error)}</p>;
  const { plan: then, changes } = answer;
  const own = then.runs.find((each) => each.run === run.key);
  if (then.status !== 'planned') {
    return (
      <p>
        <strong>{words.noPlan}</strong> <Sentences of={then.conflict.slice(0, 1)} />
      </p>
    );
  }
  const [odds, before] = oddsPair(
    then.odds?.soundByTheDay ?? null,
    plan.document.odds?.soundByTheDay ?? null,
  );
  return (
    <>
      <p>
        {oddsWord}: <strong className="numbers">{odds}</strong>{' '}
        <span className="soft numbers">
          ({remedies.before}: {before})
        </span>
        {own?.ready && (
          <>
            {' '}
            · {ready} {day(own.ready.likely)}
          </>
        )}
        <br />
        <span className="small">{words.moves(changes.length)}</span>
      </p>
      <p>
        <button
          type="button"
          className="button plain"
          onClick={() =>
            void navigate(`/runs/${run.id}`, {
              state: { tried: { title: response, answer } },
            })
          }
        >
          {words.show}
          <span className="visually-hidden">: {words.responses[response]}</span>
        </button>
      </p>
    </>
  );
}
