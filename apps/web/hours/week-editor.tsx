import type { ReactNode } from 'react';
import { useForm } from '../form/form-context.js';
import { listAt, withValue } from '../form/values.js';
import { useWords } from '../words/words.js';
import { joined, type Span } from './span-edits.js';
import { SpansEditor } from './spans-editor.js';

const days = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** The hours of every week, day by day. */
export function WeekEditor(): ReactNode {
  const { hours } = useWords();
  const { content, change } = useForm();
  const goOn = (index: number, today: readonly Span[], tomorrow: Span): void => {
    const [day, next] = [days[index] ?? 'monday', days[(index + 1) % days.length] ?? 'monday'];
    const later = listAt(content, ['hours', 'weekly', next]) as unknown as readonly Span[];
    const first = withValue(content, ['hours', 'weekly', day], today as never);
    change([], withValue(first, ['hours', 'weekly', next], joined([...later, tomorrow]) as never));
  };
  return (
    <section className="card stack" aria-labelledby="weekly">
      <div className="stack tight">
        <h2 id="weekly">{hours.weekly}</h2>
        <p className="soft small">{hours.weeklyHint}</p>
      </div>
      <div className="hour-marks numbers soft" aria-hidden>
        {[0, 6, 12, 18, 24].map((hour) => (
          <span key={hour}>{hour}</span>
        ))}
      </div>
      {days.map((day, i) => (
        <section key={day} className="week-day" aria-labelledby={`day-${day}`}>
          <h3 id={`day-${day}`}>{hours.days[day]}</h3>
          <SpansEditor
            path={['hours', 'weekly', day]}
            day={hours.days[day]}
            onNext={(today, tomorrow) => goOn(i, today, tomorrow)}
          />
        </section>
      ))}
    </section>
  );
}
