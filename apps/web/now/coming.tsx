import type { ReactNode } from 'react';
import { useNow, useTimes } from '../look/times.js';
import { useTimeZone } from '../session/session.js';
import { useWords } from '../words/words.js';
import type { BenchSitting } from './bench-view.js';
import { comingAfter } from './coming-after.js';

/** What opens next, today and tomorrow. */
export function Coming({
  sittings,
  shown,
}: {
  readonly sittings: readonly BenchSitting[];
  readonly shown: BenchSitting;
}): ReactNode {
  const { now } = useWords();
  const times = useTimes();
  const days = comingAfter(sittings, shown, useNow(60_000), useTimeZone());
  return (
    <section className="stack tight" aria-labelledby="coming">
      <h2 id="coming">{now.coming.title}</h2>
      {days.length === 0 && <p className="soft">{now.coming.nothing}</p>}
      {days.map(({ day, at, stages }) => (
        <div key={at} className="coming-day">
          <h3>{day === 'later' ? times.day(at) : now.coming[day]}</h3>
          <ul>
            {stages.map(({ runId, stage }) => (
              <li key={`${runId} ${stage.key} ${String(stage.attempt)}`}>
                <span className="numbers when">{times.time(stage.startAt)}</span>
                <span>
                  {stage.title}
                  <span className="soft small numbers block">
                    {now.opensAt(times.dayTime(stage.opensAt))}
                    {stage.kind === 'unmould' &&
                      stage.surelyOpenAt !== null &&
                      stage.surelyOpenAt > stage.opensAt &&
                      ` · ${now.countOn(times.dayTime(stage.surelyOpenAt))}`}
                    {stage.lastCallAt !== null && ` · ${now.lastCallAt(times.dayTime(stage.lastCallAt))}`}
                  </span>
                </span>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
