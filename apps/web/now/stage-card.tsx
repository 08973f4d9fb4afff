import { Check, Hand, TriangleAlert } from 'lucide-react';
import { lazy, Suspense, useState, type ReactNode } from 'react';
import { StagePieces } from '../look/stage-pieces.js';
import { useNow, useTimes } from '../look/times.js';
import { Confirm } from '../shell/confirm.js';
import { useWords } from '../words/words.js';
import type { BenchRun, BenchStage } from './bench-view.js';
import { planOf } from './sitting-facts.js';
import { timingOf } from './countdown.js';
import { CountdownView } from './countdown-view.js';
import { DoneDialog } from './done-dialog.js';
import { loadMishaps } from './load-dialogs.js';
import { instantNow, type Logging } from './use-logging.js';
import { Sentences } from '../look/sentence.js';
import { WeighLink } from './weigh/weigh-link.js';
import type { SheetWeigh } from '../run/sheet-sittings.js';

const MishapDialog = lazy(loadMishaps);

/** A stage that can be begun, with all that can be said about it. */
export function StageCard({
  bench,
  run,
  weigh,
  logging,
  hasRunTitle,
}: {
  readonly bench: BenchStage;
  /** Of the run it belongs to. */
  readonly run: BenchRun;
  readonly weigh: readonly SheetWeigh[];
  readonly logging: Logging;
  /** Several runs are at hand. */
  readonly hasRunTitle: boolean;
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const { stage } = bench;
  return (
    <li className="card stage stack" aria-label={stage.title}>
      <div className="head">
        <h3>
          {stage.title}
          <StagePieces stage={stage} all={planOf(run)?.groups} />
        </h3>
        <p className="soft small numbers">
          {hasRunTitle && <>{now.from(bench.runTitle)} · </>}
          {now.bestAt(times.time(stage.startAt))}
          {stage.lastCallAt !== null && <> · {now.lastCallAt(times.dayTime(stage.lastCallAt))}</>}
        </p>
      </div>
      <CountdownView stage={stage} />
      {stage.cautions.some(({ code }) => code.startsWith('caution.lye')) && (
        <p className="small lye-line">
          <TriangleAlert size={18} aria-hidden /> {now.lyeAlways}
        </p>
      )}
      <WeighLink bench={bench} weigh={weigh} />
      {bench.isNoted && <p className="small soft">{now.isNoted}</p>}
      <Actions bench={bench} run={run} logging={logging} />
      <details>
        <summary>{now.why}</summary>
        <p className="small">
          <Sentences of={stage.why} />
        </p>
      </details>
    </li>
  );
}

/** So long before a stage opens, “done” is more likely a slip of the finger. */
const EARLY_MS = 60 * 60_000;

function Actions({
  bench: { runId, stage, canBeNotFirm },
  run,
  logging,
}: {
  readonly bench: BenchStage;
  readonly run: BenchRun;
  readonly logging: Logging;
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const timing = timingOf(stage, useNow(10_000));
  const isEarly = timing.kind === 'ahead' && timing.opensIn > EARLY_MS;
  const [asked, setAsked] = useState<'times' | 'mishap'>();
  const close = (): void => setAsked(undefined);
  const about = (action: string): string => now.about(action, stage.title);
  const say = (kind: 'done' | 'not-yet') => () =>
    logging.log(runId, { kind, stage: stage.key, at: instantNow() });
  return (
    <div className="actions">
      {isEarly ? (
        <Confirm
          className="button wide"
          label={
            <>
              <Check size={24} aria-hidden /> {now.done}
            </>
          }
          name={about(now.done)}
          ask={now.early.ask(times.dayTime(stage.opensAt))}
          yes={now.early.yes}
          no={now.early.no}
          onYes={say('done')}
        />
      ) : (
        <button
          type="button"
          // What is not open yet may be logged, but does not ask to be.
          className={timing.kind === 'ahead' ? 'button wide' : 'button main wide'}
          aria-label={about(now.done)}
          onClick={say('done')}
        >
          <Check size={24} aria-hidden /> {now.done}
        </button>
      )}
      {canBeNotFirm && (
        <button type="button" className="button" aria-label={about(now.notFirm)} onClick={say('not-yet')}>
          <Hand size={20} aria-hidden /> {now.notFirm}
        </button>
      )}
      <button
        type="button"
        className="button warn"
        aria-label={about(now.wentWrong)}
        onClick={() => setAsked('mishap')}
      >
        <TriangleAlert size={20} aria-hidden /> {now.wentWrong}
      </button>
      <button
        type="button"
        className="button plain"
        aria-label={about(now.otherTimes)}
        onClick={() => setAsked('times')}
      >
        {now.otherTimes}
      </button>
      {asked === 'times' && (
        <DoneDialog stage={stage} onClose={close} onDone={(entry) => logging.log(runId, entry)} />
      )}
      {asked === 'mishap' && (
        <Suspense>
          <MishapDialog
            bench={run}
            part={stage.part}
            onClose={close}
            onMishap={(entry) => logging.log(runId, entry)}
          />
        </Suspense>
      )}
    </div>
  );
}
