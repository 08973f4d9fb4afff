import { useMutation, useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';
import type { Tried } from './tried.js';
import { useOddsPair } from './use-odds.js';
import { whatIf, type Document } from './use-run.js';
import { Sentence } from '../look/sentence.js';
import { useTexts } from '../look/use-texts.js';
import type { Message } from '#contract';

type Remedy = Schemas['Remedy'];

/** What would help, when asked for; at once where there is no plan. */
export function Remedies({
  run,
  document,
  tried,
  onTry,
  title,
}: {
  readonly run: Schemas['StoredRun'];
  readonly document: Document;
  readonly tried: Tried | undefined;
  readonly onTry: (tried: Tried) => void;
  readonly title: string;
}): ReactNode {
  const { remedies: words } = useWords().run;
  const oddsPair = useOddsPair();
  const [asked, setAsked] = useState(document.status !== 'planned');
  const { data, error, isFetching, refetch } = useQuery({
    queryKey: ['remedies', run.id, document.madeAt],
    queryFn: () => answered(api.GET('/api/runs/{id}/remedies', { params: { path: { id: run.id } } })),
    enabled: asked,
    staleTime: Infinity,
  });
  return (
    <section className="stack tight run-help" aria-busy={isFetching}>
      <h2>{document.status === 'planned' ? title : words.nearest}</h2>
      {!asked && (
        <p>
          <button type="button" className="button" onClick={() => setAsked(true)}>
            {words.ask}
          </button>
        </p>
      )}
      {isFetching && <p role="status">{words.asking}</p>}
      {error !== null && <Failed error={error} again={() => void refetch()} />}
      {data !== undefined && !isFetching && (
        <>
          {data.notes.map((note) => (
            <p key={note.code} className="small soft">
              <Sentence of={note} />
            </p>
          ))}
          {hasAged(document.odds, data.odds) && (
            <p className="note amber">
              {words.aged(
                ...oddsPair(data.odds?.soundByTheDay ?? null, document.odds?.soundByTheDay ?? null),
              )}
            </p>
          )}
          <ol className="run-remedies">
            {data.remedies.map((remedy) => (
              <li key={JSON.stringify(remedy.change)} className="card">
                <OneRemedy
                  run={run.id}
                  remedy={remedy}
                  isTried={JSON.stringify(tried?.change) === JSON.stringify(remedy.change)}
                  onTry={onTry}
                />
              </li>
            ))}
          </ol>
          <p>
            <button type="button" className="button plain" onClick={() => void refetch()}>
              {words.again}
            </button>
          </p>
        </>
      )}
    </section>
  );
}

/** Other runs may have taken hours since the plan was made; remedies are measured against the plan as of now. */
function hasAged(then: Document['odds'], now: Document['odds']): boolean {
  if (then === null || now === null) return false;
  return Math.abs(then.soundByTheDay - now.soundByTheDay) > 3 * (then.standardError + now.standardError);
}

function OneRemedy({
  run,
  remedy,
  isTried,
  onTry,
}: {
  readonly run: string;
  readonly remedy: Remedy;
  readonly isTried: boolean;
  readonly onTry: (tried: Tried) => void;
}): ReactNode {
  const { remedies: words } = useWords().run;
  const texts = useTexts();
  const title = texts.of(remedy.title);
  const { mutate, isPending, error } = useMutation({
    mutationFn: () => whatIf(run, { change: remedy.change }),
    onSuccess: (answer) => {
      onTry({ title: remedy.title, answer, effects: remedy.effects, change: remedy.change });
      scrollTo({ top: 0 });
    },
  });
  return (
    <article className="stack tight">
      <h3>{title}</h3>
      <p>{remedy.does.map((gain) => texts.of(gain)).join(' ')}</p>
      <div>
        <h4>{words.worse}</h4>
        {remedy.worse.length === 0 ? <p>{words.nothingWorse}</p> : <Sentences of={remedy.worse} />}
      </div>
      {remedy.also.length > 0 && (
        <details>
          <summary>{words.also}</summary>
          <Sentences of={remedy.also} />
          <p className="small soft">{words.points(texts.number(remedy.disturbance.points))}</p>
        </details>
      )}
      {remedy.cautions.map((caution) => (
        <p key={caution.code} className="note amber small">
          <Sentence of={caution} />
        </p>
      ))}
      <div className="row">
        <button
          type="button"
          className="button main"
          disabled={isPending || isTried}
          onClick={() => mutate()}
        >
          {isTried ? words.tried : words.try}
          <span className="visually-hidden">: {title}</span>
        </button>
      </div>
      {error !== null && <Failed error={error} again={() => mutate()} />}
    </article>
  );
}

function Sentences({ of }: { readonly of: readonly Message[] }): ReactNode {
  return (
    <ul>
      {of.map((told) => (
        <li key={JSON.stringify(told)}>
          <Sentence of={told} />
        </li>
      ))}
    </ul>
  );
}
