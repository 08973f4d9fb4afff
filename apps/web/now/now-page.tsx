import { lazy, Suspense, useEffect, type ReactNode } from 'react';
import { Link } from 'react-router';
import { useNow } from '../look/times.js';
import { Failed, Loading } from '../shell/states.js';
import { useWords } from '../words/words.js';
import { AnswerNote } from './answer-note.js';
import { doneLately, isGoingOn, sittingsToShow } from './bench-view.js';
import { Coming } from './coming.js';
import { loadMishaps, loadWeighing } from './load-dialogs.js';
import './now.css';
import { DoneStages, SittingView } from './sitting-view.js';
import { Trouble } from './trouble.js';
import { useBench, type Bench } from './use-bench.js';
import { useLastCalls } from './use-last-calls.js';
import { useLogging } from './use-logging.js';
import { useWakeLock } from './use-wake-lock.js';
import { useWeigh } from './use-weigh.js';
import { useWeighedStage } from './weigh/weigh-address.js';

const WeighDialog = lazy(loadWeighing);

/** What do I do, and how long have I got. */
export default function NowPage(): ReactNode {
  const { shell } = useWords();
  const { bench, error, again } = useBench();
  return (
    <div className="now stack">
      <h1>{shell.now}</h1>
      {bench !== undefined ? (
        <BenchView bench={bench} />
      ) : error !== null ? (
        <Failed error={error} again={again} />
      ) : (
        <Loading />
      )}
    </div>
  );
}

function BenchView({ bench: { runs, sittings, hasPast, hasDesigns } }: { readonly bench: Bench }): ReactNode {
  const logging = useLogging();
  const present = useNow(30_000);
  const shown = sittingsToShow(sittings, present);
  const [sitting] = shown;
  const [weighed, stopWeighing] = useWeighedStage(sittings);
  const inSight = runs.filter(
    ({ run }) =>
      run.id === weighed?.runId || shown.some(({ stages }) => stages.some(({ runId }) => runId === run.id)),
  );
  const weighFor = useWeigh(inSight);
  const hasSitting = sitting !== undefined;
  useEffect(() => {
    if (hasSitting) Promise.all([loadWeighing(), loadMishaps()]).catch(() => undefined);
  }, [hasSitting]);
  useWakeLock(weighed !== undefined || (sitting !== undefined && isGoingOn(sitting, present)));
  useLastCalls(shown);
  const lately = doneLately(sittings, present);
  const stuck = runs.filter(({ document }) => document.status !== 'planned');
  return (
    <>
      <AnswerNote logging={logging} runs={runs} />
      {weighed !== undefined && (
        <Suspense>
          <WeighDialog bench={weighed} weigh={weighFor(weighed)} onClose={stopWeighing} />
        </Suspense>
      )}
      {stuck.map((bench) => (
        <Trouble key={bench.run.id} bench={bench} />
      ))}
      {sitting !== undefined && (
        <div className="columns">
          <div className="stack">
            {shown.map((each) => (
              <SittingView key={each.startAt} sitting={each} {...{ runs, weighFor, logging }} />
            ))}
          </div>
          <Coming sittings={sittings} shown={sitting} />
        </div>
      )}
      {sitting === undefined &&
        stuck.length === 0 &&
        (hasDesigns || hasPast || runs.length > 0 ? (
          <Nothing isAllDone={hasPast || runs.length > 0} />
        ) : (
          <First />
        ))}
      {lately.length > 0 && <DoneStages stages={lately} logging={logging} />}
    </>
  );
}

function Nothing({ isAllDone }: { readonly isAllDone: boolean }): ReactNode {
  const { now } = useWords();
  const words = isAllDone ? now.allDone : now.empty;
  return (
    <section className="card stack nothing">
      <h2>{words.title}</h2>
      <p>{words.text}</p>
      <p className="row">
        {isAllDone && (
          <Link className="button main" to="/shelf">
            {now.allDone.shelf}
          </Link>
        )}
        <Link className={isAllDone ? 'button' : 'button main'} to="/plan">
          {words.plan}
        </Link>
      </p>
    </section>
  );
}

/** Nothing has been entered yet: the guide comes first. */
function First(): ReactNode {
  const { first } = useWords().now;
  return (
    <section className="card stack nothing">
      <h2>{first.title}</h2>
      <p>{first.text}</p>
      <p className="row">
        <Link className="button main" to="/guide">
          {first.plan}
        </Link>
        <Link className="button" to="/makings">
          {first.alone}
        </Link>
      </p>
    </section>
  );
}
