import { Check, Undo2 } from 'lucide-react';
import { useQueries } from '@tanstack/react-query';
import { useId, type ReactNode } from 'react';
import { answered, api } from '../api/client.js';
import { useNow, useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { isGoingOn, type BenchRun, type BenchSitting, type BenchStage } from './bench-view.js';
import { CountdownView } from './countdown-view.js';
import { StageCard } from './stage-card.js';
import { doneEntry } from './done-entry.js';
import { takeBack, type Logging } from './use-logging.js';

/** One sitting: what can be begun, large; what comes after it; what is done. */
export function SittingView({
  sitting,
  runs,
  logging,
}: {
  readonly sitting: BenchSitting;
  readonly runs: readonly BenchRun[];
  readonly logging: Logging;
}): ReactNode {
  const { stages } = sitting;
  const heading = useId();
  const open = stages.filter(({ state }) => state === 'open');
  const hasRunTitle = new Set(stages.map(({ runId }) => runId)).size > 1;
  return (
    <section className="stack" aria-labelledby={heading}>
      <SittingHead id={heading} sitting={sitting} />
      <ol className="stages">
        {open.map((bench) =>
          bench.after.length === 0 ? (
            <StageCard key={keyOf(bench)} {...{ bench, logging, hasRunTitle }} plan={planOf(runs, bench)} />
          ) : (
            <LaterStage key={keyOf(bench)} bench={bench} hasRunTitle={hasRunTitle} />
          ),
        )}
      </ol>
    </section>
  );
}

function SittingHead({ id, sitting }: { readonly id: string; readonly sitting: BenchSitting }): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const { startAt, endAt } = sitting;
  const present = useNow(10_000);
  const day = times.day(startAt);
  const title = isGoingOn(sitting, present) ? now.current : present < startAt ? now.next(day) : now.late(day);
  return (
    <div className="row apart">
      <h2 id={id}>{title}</h2>
      <p className="soft numbers">{now.between(times.time(startAt), times.time(endAt))}</p>
    </div>
  );
}

function LaterStage({
  bench: { stage, runTitle, after },
  hasRunTitle,
}: {
  readonly bench: BenchStage;
  readonly hasRunTitle: boolean;
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  return (
    <li className="later" aria-label={stage.title}>
      <div>
        <h3>{stage.title}</h3>
        <p className="soft small numbers">
          {hasRunTitle && <>{now.from(runTitle)} · </>}
          {now.bestAt(times.time(stage.startAt))} · {now.after(after.map(now.quoted).join(', '))}
        </p>
      </div>
      <CountdownView stage={stage} />
    </li>
  );
}

/** What was done lately, each with a way back. */
export function DoneStages({
  stages,
  logging,
}: {
  readonly stages: readonly BenchStage[];
  readonly logging: Logging;
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const runIds = [...new Set(stages.map(({ runId }) => runId))];
  const logs = useQueries({
    queries: runIds.map((id) => ({
      queryKey: ['log', id],
      queryFn: () => answered(api.GET('/api/runs/{id}/log', { params: { path: { id } } })),
    })),
  });
  const entryOf = ({ runId, stage, state }: BenchStage): ReturnType<typeof doneEntry> =>
    state === 'done' ? doneEntry(logs[runIds.indexOf(runId)]?.data ?? [], stage.key) : undefined;
  return (
    <section className="stack tight" aria-labelledby="sitting-done">
      <h3 id="sitting-done">{now.earlier}</h3>
      <ul className="done-stages">
        {stages.map((bench) => {
          const { stage, runId, state } = bench;
          const entry = entryOf(bench);
          return (
            <li key={keyOf(bench)}>
              <Check size={20} aria-hidden />
              <span className="grow">
                {stage.title}{' '}
                <span className="soft small numbers">
                  {state === 'done' ? `${now.isDone}, ${times.time(stage.endAt)}` : now.isLogged}
                </span>
              </span>
              {entry !== undefined && (
                <button
                  type="button"
                  className="button plain"
                  aria-label={now.about(now.answer.undo, stage.title)}
                  onClick={() => logging.log(runId, takeBack(entry))}
                >
                  <Undo2 size={20} aria-hidden /> {now.answer.undo}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function planOf(runs: readonly BenchRun[], { runId }: BenchStage): BenchRun['document']['runs'][number] {
  const found = runs.find(({ run }) => run.id === runId);
  const plan = found?.document.runs.find(({ run }) => run === found.run.key);
  if (plan === undefined) throw new Error(`no plan of run ${runId}`);
  return plan;
}

function keyOf({ runId, stage }: BenchStage): string {
  return `${runId} ${stage.key} ${String(stage.attempt)}`;
}
