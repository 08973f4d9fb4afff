import { lazy, Suspense, type ReactNode } from 'react';
import { Link, NavLink, Route, Routes, useParams } from 'react-router';
import { ApiError } from '../api/client.js';
import { Failed, Loading, NothingHere } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { GiveUp } from './give-up.js';
import './run.css';
import { RunGroups } from './run-groups.js';
import { usePlan, useRun } from './use-run.js';
import type { RunProps } from './run-props.js';

// Most come for the plan: it is fetched while the API is asked.
const planView = import('./plan-view.js');
const PlanView = lazy(() => planView);
const AmountsView = lazy(() => import('./amounts-view.js'));
const BenchSheet = lazy(() => import('./bench-sheet.js'));
const LogView = lazy(() => import('./log-view.js'));
const PlansView = lazy(() => import('./plans-view.js'));

const tabs = ['plan', 'amounts', 'sheet', 'log', 'plans'] as const;

/** One run: does its plan hold, what it takes, what was done, what went wrong. */
export default function RunPage(): ReactNode {
  const { id = '' } = useParams();
  const run = useRun(id);
  const plan = usePlan(id);
  const error = run.error ?? plan.error;
  if (run.data !== undefined && plan.data !== undefined) return <Views run={run.data} plan={plan.data} />;
  const isUnplanned = plan.error instanceof ApiError && plan.error.status === 404;
  if (run.data !== undefined && isUnplanned) return <Unplanned run={run.data} />;
  if (error === null) return <Loading />;
  return (
    <Failed
      error={error}
      again={() => {
        void run.refetch();
        void plan.refetch();
      }}
    />
  );
}

/** A run that was written down when it was over: nothing was ever planned of it. */
function Unplanned({ run }: Pick<RunProps, 'run'>): ReactNode {
  const { run: words } = useWords();
  return (
    <div className="stack run-page">
      <Title run={run} />
      <p>{words.unplanned}</p>
      <p>
        <Link className="button" to="/shelf">
          {words.toShelf}
        </Link>
      </p>
    </div>
  );
}

function Title({ run }: Pick<RunProps, 'run'>): ReactNode {
  const { run: words } = useWords();
  return (
    <>
      <h1>{run.order.title}</h1>
      <p className="soft">
        {words.states[run.state]} · {words.pieces(run.order.count)}
      </p>
    </>
  );
}

function Views(props: RunProps): ReactNode {
  const { run } = props;
  const { run: words } = useWords();
  const at = (tab: (typeof tabs)[number]): string => `/runs/${run.id}${tab === 'plan' ? '' : `/${tab}`}`;
  return (
    <div className="stack run-page">
      <header className="stack tight">
        <Title run={run} />
        <RunGroups plan={props.plan.document.runs.find((each) => each.run === run.key)} />
        {run.state === 'abandoned' && <p className="note amber">{words.giveUp.done}</p>}
      </header>
      <nav className="run-tabs" aria-label={words.tabs.label}>
        {tabs.map((tab) => (
          <NavLink key={tab} to={at(tab)} end>
            {words.tabs[tab]}
          </NavLink>
        ))}
      </nav>
      <Suspense fallback={<Loading />}>
        <Routes>
          <Route index element={<PlanView {...props} />} />
          <Route path="amounts" element={<AmountsView {...props} />} />
          <Route path="sheet" element={<BenchSheet {...props} />} />
          <Route path="log" element={<LogView {...props} />} />
          <Route path="plans" element={<PlansView {...props} />} />
          <Route path="*" element={<NothingHere />} />
        </Routes>
        {(run.state === 'planned' || run.state === 'making') && (
          <footer className="run-end">
            <GiveUp run={run} />
          </footer>
        )}
      </Suspense>
    </div>
  );
}
