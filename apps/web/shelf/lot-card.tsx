import { useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import type { Schemas } from '../api/client.js';
import { oneStop } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { usePlan } from '../run/use-run.js';
import { useWords } from '../words/words.js';
import { CureDays } from './cure-days.js';
import type { NextWeighIn } from './curing-runs.js';
import type { LotStatus } from './lot-status.js';
import { ReadyStrip, type Span } from './ready-strip.js';
import { WeighIns } from './weigh-ins.js';

/** One lot: how long to go, how sure that is, and its weigh-ins when they are asked for. */
export function LotCard({
  lot,
  status,
  now,
  span,
  weighIn,
}: {
  readonly lot: Schemas['Lot'];
  readonly status: LotStatus;
  readonly now: number;
  /** The time that the pictures of all lots share; absent: no picture. */
  readonly span?: Span;
  /** Absent: it is not known, or the lot is ready. */
  readonly weighIn?: NextWeighIn | undefined;
}): ReactNode {
  const { shelf } = useWords();
  const times = useTimes();
  const [isOpen, setOpen] = useState(false);
  // The days beside that on which it is cured are those of its plan.
  const { data } = usePlan(lot.runId);
  const own = data?.document.runs[0];
  const { high } = lot.ready;
  return (
    <article className="card stack lot" aria-labelledby={`lot-${lot.id}`}>
      <header className="row apart">
        <div>
          <h3 id={`lot-${lot.id}`}>
            <Link className="tap" to={`/runs/${lot.runId}`}>
              {lot.title}
            </Link>
          </h3>
          <p className="soft small">
            {shelf.pieces(lot.count)} · {shelf.made(times.date(lot.madeAt))}
          </p>
        </div>
        {status.stage !== 'ready' && <Countdown days={status.days} />}
      </header>
      {status.stage === 'ready' ? (
        <p>{shelf.readySince(times.date(high))}</p>
      ) : (
        <>
          {span !== undefined && <ReadyStrip lot={lot} now={now} span={span} />}
          <CureDays usable={own?.usable} cured={lot.ready} best={own?.best} now={now} />
          {status.stage !== 'curing' && <p className="note">{shelf.perhaps}</p>}
          {weighIn !== undefined && !isOpen && (
            <p className={weighIn.isDue ? 'note' : 'soft small'}>
              {weighIn.isDue
                ? weighIn.last === undefined
                  ? shelf.weighFirst
                  : shelf.weighAgain(times.day(weighIn.last))
                : oneStop(shelf.weighNext(times.day(weighIn.at)))}{' '}
              {weighIn.isDue && (
                <button
                  type="button"
                  className="button"
                  aria-label={shelf.weighLot(lot.title)}
                  onClick={() => setOpen(true)}
                >
                  {shelf.weighNow}
                </button>
              )}
            </p>
          )}
        </>
      )}
      <details open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>{shelf.weighIns}</summary>
        {isOpen && <WeighIns lot={lot} isCuring={status.stage !== 'ready'} />}
      </details>
    </article>
  );
}

function Countdown({ days }: { readonly days: number }): ReactNode {
  const { shelf } = useWords();
  if (days < 0) return <p className="countdown soft small">{shelf.sinceDays(-days)}</p>;
  return (
    <p className="countdown">
      <span className="big numbers">{days === 0 ? shelf.today : days}</span>{' '}
      <span className="soft small">{days === 0 ? shelf.todayUnder : shelf.inDays(days)}</span>
    </p>
  );
}
