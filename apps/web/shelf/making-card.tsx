import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { CureDays } from './cure-days.js';
import { nextStage } from './curing-runs.js';
import { ReadyStrip, type Span } from './ready-strip.js';
import type { Pouring } from './use-shelf.js';

/** Soap that is poured and still worked at: it cures already, and has no lot yet. */
export function MakingCard({
  pouring: { run, plan, pouredAt },
  now,
  span,
}: {
  readonly pouring: Pouring;
  readonly now: number;
  readonly span: Span;
}): ReactNode {
  const { shelf, run: runWords } = useWords();
  const times = useTimes();
  const next = nextStage(plan.stages);
  const { ready } = plan;
  return (
    <article className="card stack lot" aria-labelledby={`run-${run.id}`}>
      <header>
        <h3 id={`run-${run.id}`}>
          <Link className="tap" to={`/runs/${run.id}`}>
            {plan.title}
          </Link>
        </h3>
        <p className="soft small">
          {shelf.pieces(plan.count)} · {shelf.poured(times.date(pouredAt))}
        </p>
      </header>
      {ready === null ? (
        <p className="note coral">{shelf.noDays}</p>
      ) : (
        <>
          <ReadyStrip lot={{ madeAt: new Date(pouredAt).toISOString(), ready }} now={now} span={span} />
          <CureDays usable={plan.usable} cured={ready} best={plan.best} now={now} />
        </>
      )}
      {next !== undefined && (
        <p>
          {shelf.stillMade} <Link to="/">{runWords.nextAt(next.title, times.dayTime(next.startAt))}</Link>
        </p>
      )}
    </article>
  );
}
