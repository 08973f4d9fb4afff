import { useTexts } from '../../look/use-texts.js';
import type { ReactNode } from 'react';
import type { PlanInput, Span } from '#contract';
import type { Issue } from '#units';
import { useWords } from '../../words/words.js';
import { weekOf, type Day, type GuideDraft } from './guide-draft.js';

const week: readonly Day[] = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
/** What a day begins with once it is ticked. */
const evening: Span = { from: '18:00', to: '21:00' };

/** One stretch for each day of an ordinary week. */
export function HoursStep({
  draft,
  input,
  issues,
  onChange,
}: {
  readonly draft: GuideDraft;
  readonly input: PlanInput;
  readonly issues: readonly Issue[];
  readonly onChange: (days: GuideDraft['days']) => void;
}): ReactNode {
  const { guide } = useWords().plan;
  const texts = useTexts();
  const weekly = weekOf(draft, input.workshop.hours.weekly);
  const set = (day: Day, span: Span | null): void => onChange({ ...draft.days, [day]: span });
  const hasMany = week.some((day) => weekly[day].length > 1);
  return (
    <fieldset className="stack tight">
      <legend>{guide.hoursHow}</legend>
      <p className="soft small">
        {guide.hoursKept} {hasMany && guide.manySpans}
      </p>
      {week.map((day) => {
        const spans = weekly[day];
        const [first] = spans;
        const wrong = issues.filter(({ path }) => path[2] === day).map(texts.issue);
        return (
          <div key={day} className="guide-day">
            <label className="row">
              <input
                type="checkbox"
                checked={first !== undefined}
                onChange={({ target }) => set(day, target.checked ? evening : null)}
              />
              <span>{guide.days[day]}</span>
            </label>
            {first !== undefined && (
              <span className="row numbers">
                {(['from', 'to'] as const).map((end) => (
                  <input
                    key={end}
                    type="time"
                    aria-label={(end === 'from' ? guide.fromOn : guide.toOn)(guide.days[day])}
                    aria-invalid={wrong.length > 0}
                    value={end === 'from' ? first.from : (spans.at(-1) ?? first).to}
                    onChange={({ target }) =>
                      set(day, { from: first.from, to: (spans.at(-1) ?? first).to, [end]: target.value })
                    }
                  />
                ))}
              </span>
            )}
            {wrong.length > 0 && <p className="wrong small">{wrong.join(' ')}</p>}
          </div>
        );
      })}
      {issues
        .filter(({ path }) => path.length <= 2)
        .map((issue) => (
          <p key={issue.code} className="wrong small">
            {texts.issue(issue)}
          </p>
        ))}
      <p className="soft small">{guide.hoursNote}</p>
    </fieldset>
  );
}
