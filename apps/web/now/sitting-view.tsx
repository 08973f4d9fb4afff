import { Check, Undo2 } from 'lucide-react';
import { useQueries } from '@tanstack/react-query';
import { useId, type ReactNode } from 'react';
import { answered, api } from '../api/client.js';
import { useNow, useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { isAhead, type BenchRun, type BenchSitting, type BenchStage } from './bench-view.js';
import { doneEntry } from './done-entry.js';
import { SittingCautions } from './sitting-cautions.js';
import { SittingHead } from './sitting-head.js';
import { GetOut, SittingJobs } from './sitting-plan.js';
import { StageCard } from './stage-card.js';
import type { WeighFor } from './use-weigh.js';
import { takeBack, type Logging } from './use-logging.js';

/** One sitting: what can be begun, large; what comes after it. A day ahead, its plan instead. */
export function SittingView({
  sitting,
  runs,
  weighFor,
  logging,
}: {
  readonly sitting: BenchSitting;
  readonly runs: readonly BenchRun[];
  readonly weighFor: WeighFor;
  readonly logging: Logging;
}): ReactNode {
  const { now } = useWords();
  const { stages } = sitting;
  const heading = useId();
  const isFarOff = isAhead(sitting, useNow(10_000));
  const open = stages.filter(({ state }) => state === 'open');
  const hasRunTitle = new Set(stages.map(({ runId }) => runId)).size > 1;
  const cards = (
    <ol className="stages">
      {open.map((bench) =>
        bench.after.length === 0 ? (
          <StageCard
            key={keyOf(bench)}
            {...{ bench, logging, hasRunTitle }}
            run={runFor(runs, bench)}
            weigh={weighFor(bench)}
          />
        ) : (
          <LaterStage key={keyOf(bench)} bench={bench} hasRunTitle={hasRunTitle} />
        ),
      )}
    </ol>
  );
  return (
    <section className="stack" aria-labelledby={heading}>
      <SittingHead id={heading} sitting={sitting} runs={runs} />
      {isFarOff ? (
        <>
          <div className="card stack">
            <SittingJobs {...{ sitting, runs, weighFor }} />
            <section className="stack tight">
              <h3>{now.plan.getOut}</h3>
              <GetOut {...{ sitting, runs, weighFor }} />
            </section>
          </div>
          <details>
            <summary>{now.plan.sooner}</summary>
            <div className="stack">
              <SittingCautions stages={open} />
              {cards}
            </div>
          </details>
        </>
      ) : (
        <>
          <SittingCautions stages={open} />
          {cards}
          <details>
            <summary>{now.plan.getOut}</summary>
            <GetOut {...{ sitting, runs, weighFor }} />
          </details>
        </>
      )}
    </section>
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
      <h3>{stage.title}</h3>
      <p className="soft small numbers">
        {hasRunTitle && <>{now.from(runTitle)} · </>}
        {now.bestAt(times.time(stage.startAt))}
        {stage.lastCallAt !== null && <> · {now.lastCallAt(times.dayTime(stage.lastCallAt))}</>}
        {' · '}
        {now.after(after.map(now.quoted).join(', '))}
      </p>
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

function runFor(runs: readonly BenchRun[], { runId }: BenchStage): BenchRun {
  const found = runs.find(({ run }) => run.id === runId);
  if (found === undefined) throw new Error(`there is no run ${runId}`);
  return found;
}

function keyOf({ runId, stage }: BenchStage): string {
  return `${runId} ${stage.key} ${String(stage.attempt)}`;
}
