import type { ReactNode } from 'react';
import { useTimes, timesFor } from '../look/times.js';
import { useLanguage, useWords } from '../words/words.js';
import type { Day, Stretch } from './weeks.js';

/** The coming weeks, a band for each day: working hours, what is quiet, what is planned; and the same as a table. */
export function WeeksPicture({
  days,
  zone,
}: {
  readonly days: readonly Day[];
  readonly zone: string;
}): ReactNode {
  const { hours } = useWords();
  const times = useZoneTimes(zone);
  const weeks = Array.from({ length: Math.ceil(days.length / 7) }, (_, i) => days.slice(7 * i, 7 * i + 7));
  return (
    <section className="card stack" aria-labelledby="weeks">
      <div className="stack tight">
        <h2 id="weeks">{hours.weeks}</h2>
        <ul className="legend small">
          {(['open', 'quiet', 'sitting'] as const).map((kind) => (
            <li key={kind}>
              <span className={`key ${kind}`} aria-hidden /> {hours.legend[kind]}
            </li>
          ))}
        </ul>
      </div>
      <div className="weeks" aria-hidden>
        {weeks.map((week) => (
          <div key={week[0]?.date} className="week">
            <p className="small soft">{hours.weekOf(times.day(noonOf(week[0])))}</p>
            {week.map((day, i) => (
              <DayRow
                key={day.date}
                day={day}
                label={times.day(noonOf(day))}
                isToday={day === days[0] && i === 0}
              />
            ))}
          </div>
        ))}
      </div>
      <details className="more">
        <summary>{hours.asText}</summary>
        <div className="scroll-x" tabIndex={0} role="group" aria-label={hours.weeks}>
          <WeeksTable days={days} zone={zone} />
        </div>
      </details>
    </section>
  );
}

function DayRow({
  day,
  label,
  isToday,
}: {
  readonly day: Day;
  readonly label: string;
  readonly isToday: boolean;
}): ReactNode {
  const { hours } = useWords();
  return (
    <div className={isToday ? 'week-row today' : 'week-row'}>
      <span className="small numbers">
        {label}
        {day.isException && ' *'}
      </span>
      <span className="bar">
        {day.open.map((each) => mark('open', each))}
        {day.quiet.map((each) => mark('quiet', each))}
        {day.sittings.map((each) => mark('sitting', each, each.title))}
        {day.hours !== 24 && (
          <span className="clock-note">{day.hours > 24 ? hours.clockBack : hours.clockForward}</span>
        )}
      </span>
    </div>
  );
}

function mark(kind: string, { from, to }: Stretch, title?: string): ReactNode {
  const style = { insetInlineStart: `${String(100 * from)}%`, width: `${String(100 * (to - from))}%` };
  return <span key={`${kind} ${String(from)} ${title ?? ''}`} className={kind} style={style} title={title} />;
}

function WeeksTable({ days, zone }: { readonly days: readonly Day[]; readonly zone: string }): ReactNode {
  const { hours } = useWords();
  const times = useZoneTimes(zone);
  const said = (each: Stretch): string => `${times.time(each.fromAt)}–${times.time(each.toAt)}`;
  return (
    <table className="numbers small">
      <thead>
        <tr>
          <th scope="col">{hours.day}</th>
          <th scope="col">{hours.atBench}</th>
          <th scope="col">{hours.planned}</th>
        </tr>
      </thead>
      <tbody>
        {days.map((day) => (
          <tr key={day.date}>
            <th scope="row">
              {times.day(noonOf(day))}
              {day.isException && ` (${hours.differs})`}
              {day.hours !== 24 && ` (${day.hours > 24 ? hours.clockBack : hours.clockForward})`}
            </th>
            <td>{day.open.map(said).join(', ') || hours.notAtAll}</td>
            <td>{day.sittings.map((each) => `${said(each)} ${each.title}`).join(', ') || hours.nothing}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Hours are those of the workshop, whatever zone this device shows elsewhere. */
function useZoneTimes(zone: string): ReturnType<typeof useTimes> {
  return timesFor(useLanguage(), zone);
}

/** Noon is safely within its day, also where the clocks change at midnight. */
function noonOf(day: Day | undefined): number {
  return (day?.startAt ?? 0) + 12 * 3_600_000;
}
