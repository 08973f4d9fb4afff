import { useQueries, useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { allRuns } from '../api/all-runs.js';
import type { Schemas } from '../api/client.js';
import { Sentences } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { GiveUp } from './give-up.js';
import './run.css';
import { planQuery, type Plan } from './use-run.js';
import { useOdds } from './use-odds.js';

type Run = Schemas['StoredRun'];

/** All runs: those that still need hands with their plan, the others by name. */
export default function RunsPage(): ReactNode {
  const { data, error, refetch } = useQuery({ queryKey: ['runs'], queryFn: allRuns });
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  return <Runs data={data} />;
}

function Runs({ data }: { readonly data: readonly Run[] }): ReactNode {
  const { run: words } = useWords();
  const live = data.filter(({ state }) => state === 'planned' || state === 'making');
  const over = data.filter((run) => !live.includes(run)).reverse();
  const plans = useQueries({ queries: live.map(({ id }) => planQuery(id)) });
  // All at once, or the page would grow under the finger.
  if (plans.some(({ isPending }) => isPending)) return <Loading />;
  return (
    <div className="stack">
      <div className="row apart">
        <h1>{words.title}</h1>
        <Link className="button" to="/plan">
          {words.none.plan}
        </Link>
      </div>
      <p className="soft">{words.intro}</p>
      {live.length === 0 ? <NoRuns /> : <LiveRuns runs={live} plans={plans} />}
      {over.length > 0 && (
        <section className="stack tight">
          <h2>{words.over}</h2>
          <ul className="run-over">
            {over.map(({ id, order, state }) => (
              <li key={id}>
                <Link className="tap" to={`/runs/${id}`}>
                  {order.title}
                </Link>
                <span className="soft small">
                  {words.states[state]} · {words.pieces(order.count)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function NoRuns(): ReactNode {
  const { none } = useWords().run;
  return (
    <div className="card stack tight">
      <h2>{none.title}</h2>
      <p>{none.text}</p>
    </div>
  );
}

function LiveRuns({
  runs,
  plans,
}: {
  readonly runs: readonly Run[];
  readonly plans: readonly { readonly data: Plan | undefined; readonly error: Error | null }[];
}): ReactNode {
  const { run: words } = useWords();
  return (
    <section className="stack tight">
      <h2>{words.live}</h2>
      <ul className="run-list">
        {runs.map((run, i) => (
          <li key={run.id} className="card">
            <RunCard run={run} plan={plans[i]?.data} error={plans[i]?.error ?? null} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function RunCard({
  run,
  plan,
  error,
}: {
  readonly run: Run;
  readonly plan: Plan | undefined;
  readonly error: Error | null;
}): ReactNode {
  const { run: words } = useWords();
  return (
    <article className="stack tight">
      <h3>
        <Link className="tap" to={`/runs/${run.id}`}>
          {run.order.title}
        </Link>
      </h3>
      <p className="soft small">
        {words.states[run.state]} · {words.pieces(run.order.count)}
      </p>
      {plan !== undefined && <WhereItStands run={run} plan={plan} />}
      {plan === undefined && error !== null && <Failed error={error} />}
      <GiveUp run={run} />
    </article>
  );
}

function WhereItStands({ run, plan: { document } }: { readonly run: Run; readonly plan: Plan }): ReactNode {
  const { run: words } = useWords();
  const { dayTime, day } = useTimes();
  const odds = useOdds();
  const own = document.runs.find((each) => each.run === run.key);
  const next = own?.stages.find(({ status }) => status === 'planned');
  const nothing = document.status === 'planned' ? words.nothingNext : words.remedies.none;
  return (
    <>
      {document.status !== 'planned' && (
        <p className="note coral">
          <strong>{document.status === 'conflict' ? words.conflict : words.undecided}.</strong>{' '}
          <Sentences of={document.conflict.slice(0, 1)} />
        </p>
      )}
      <dl className="run-facts">
        <div>
          <dt>{words.next}</dt>
          <dd>{next === undefined ? nothing : words.nextAt(next.title, dayTime(next.startAt))}</dd>
        </div>
        <div>
          <dt>{words.odds}</dt>
          <dd className="numbers">{odds(document.odds)}</dd>
        </div>
        <div>
          <dt>{words.ready}</dt>
          <dd>
            {own?.ready ? day(own.ready.likely) : words.remedies.none}
            {own?.ready && <div className="soft small">{words.countOn(day(own.ready.high))}</div>}
          </dd>
        </div>
      </dl>
    </>
  );
}
