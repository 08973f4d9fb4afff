import { useMutation, useQuery } from '@tanstack/react-query';
import { useState, type ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { Sentence, Sentences } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import type { RunProps } from './run-props.js';
import { useOdds } from './use-odds.js';
import { useReplanned, type Plan } from './use-run.js';

/** Every plan this run had, why it was made and what it moved. */
export default function PlansView({ run, plan }: RunProps): ReactNode {
  const { run: words } = useWords();
  const { data, error, refetch } = useQuery({
    queryKey: ['plans', run.id],
    queryFn: () => answered(api.GET('/api/runs/{id}/plans', { params: { path: { id: run.id } } })),
  });
  return (
    <section className="stack tight">
      <h2>{words.plans.title}</h2>
      {run.state !== 'abandoned' && <PlanAnew id={run.id} />}
      {data === undefined &&
        (error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />)}
      <ol className="run-log">
        {data?.map((head) => (
          <li key={head.number}>
            <Head run={run} head={head} isLatest={head.number === plan.number} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function PlanAnew({ id }: { readonly id: string }): ReactNode {
  const { anew } = useWords().run;
  const replanned = useReplanned(id);
  const { mutate, isPending, isSuccess, error, variables } = useMutation({
    mutationFn: (afresh: boolean) =>
      answered(
        api.POST('/api/runs/{id}/plan', {
          params: { path: { id }, header: { 'Idempotency-Key': newId() } },
          body: { afresh },
        }),
      ),
    onSuccess: replanned,
  });
  return (
    <div className="row">
      <button type="button" className="button" disabled={isPending} onClick={() => mutate(false)}>
        {isPending ? anew.doing : anew.ask}
      </button>
      <button type="button" className="button" disabled={isPending} onClick={() => mutate(true)}>
        {anew.afresh}
      </button>
      <span role="status">{isSuccess && (variables ? anew.doneAfresh : anew.done)}</span>
      {error !== null && <Failed error={error} again={() => mutate(variables ?? false)} />}
    </div>
  );
}

function Head({
  run,
  head,
  isLatest,
}: {
  readonly run: RunProps['run'];
  readonly head: Schemas['PlanHead'];
  readonly isLatest: boolean;
}): ReactNode {
  const { run: words } = useWords();
  const { dayTime } = useTimes();
  const [open, setOpen] = useState(false);
  const { number, madeAt, cause, status } = head;
  const { data, error } = useQuery({
    queryKey: ['plans', run.id, number],
    queryFn: () =>
      answered(api.GET('/api/runs/{id}/plans/{number}', { params: { path: { id: run.id, number } } })),
    enabled: open,
    staleTime: Infinity,
  });
  return (
    <div className="stack tight">
      <p>
        <strong>{words.plans.number(number)}</strong>
        {isLatest && <> · {words.plans.latest}</>}
        {status !== 'planned' && <> · {status === 'conflict' ? words.conflict : words.undecided}</>}
        <br />
        <span className="soft small">
          {dayTime(madeAt)} · <Sentence of={cause} />
        </span>
      </p>
      <p>
        <button
          type="button"
          className="button plain run-quiet"
          aria-expanded={open}
          onClick={() => setOpen(!open)}
        >
          {open ? words.plans.hide : words.plans.show}
          <span className="visually-hidden">: {words.plans.number(number)}</span>
        </button>
      </p>
      {open && data === undefined && error === null && <p role="status">{words.plans.showing}</p>}
      {error !== null && <Failed error={error} />}
      {open && data !== undefined && <Changes plan={data} run={run.key} />}
    </div>
  );
}

function Changes({ plan, run }: { readonly plan: Plan; readonly run: string }): ReactNode {
  const { plans: words } = useWords().run;
  const { dayTime } = useTimes();
  const odds = useOdds();
  const stages = plan.document.runs.find((each) => each.run === run)?.stages ?? [];
  const at = (instant: string | null): string => (instant === null ? '' : dayTime(instant));
  return (
    <div className="note stack tight">
      <p>{words.oddsThen(odds(plan.document.odds))}</p>
      {plan.changes.length === 0 && <p>{plan.number === 1 ? words.first : words.nothing}</p>}
      <ul>
        {plan.changes.map((change) => (
          <li key={`${change.stage} ${String(change.attempt)} ${change.change}`}>
            <strong>
              {stages.find(({ key }) => key === change.stage)?.title ?? change.title ?? change.stage}
            </strong>{' '}
            {words.changes[change.change](at(change.toAt), at(change.fromAt))}
            <br />
            <span className="small soft">
              <Sentences of={change.why} />
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
