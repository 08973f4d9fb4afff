import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { fieldId, useForm } from '../form/form-context.js';
import { TextField } from '../form/fields.js';
import { listAt, textAt, withItem, withoutItem } from '../form/values.js';
import { serverNow } from '../api/server-time.js';
import { useWords } from '../words/words.js';
import { SpansEditor } from './spans-editor.js';
import { dateAfter } from './weeks.js';

const PATH = ['hours', 'exceptions'];

/** Days with hours of their own, by date. */
export function ExceptionsEditor(): ReactNode {
  const { hours } = useWords();
  const { content, change } = useForm();
  const list = listAt(content, PATH);
  const taken = list.map((each) => textAt(each, ['date']));
  const today = new Date(serverNow()).toISOString().slice(0, 10);
  const shown = list
    .map((_, index) => index)
    .sort((a, b) => (taken[a] ?? '').localeCompare(taken[b] ?? ''))
    // Days that are over stay stored, but are of no use here.
    .filter((index) => (taken[index] ?? '') >= today || taken[index] === '');
  return (
    <section className="card stack" aria-labelledby="exceptions">
      <div className="stack tight">
        <h2 id="exceptions">{hours.exceptions}</h2>
        <p className="soft small">{hours.exceptionsHint}</p>
      </div>
      {shown.length === 0 && <p className="soft">{hours.noExceptions}</p>}
      {shown.map((index) => (
        <ExceptionDay key={index} index={index} date={taken[index] ?? ''} />
      ))}
      <p>
        <button
          type="button"
          className="button"
          onClick={() => change([], withItem(content, PATH, { date: freeDate(today, taken), spans: [] }))}
        >
          + {hours.addException}
        </button>
      </p>
    </section>
  );
}

function ExceptionDay({ index, date }: { readonly index: number; readonly date: string }): ReactNode {
  const { hours } = useWords();
  const { content, change } = useForm();
  const path = [...PATH, index];
  return (
    <div className="exception stack tight">
      <div className="exception-head">
        <div className="field">
          <label htmlFor={fieldId([...path, 'date'])}>{hours.date}</label>
          <input
            type="date"
            id={fieldId([...path, 'date'])}
            value={date}
            onChange={({ target }) => change([...path, 'date'], target.value)}
          />
        </div>
        <TextField path={[...path, 'note']} label={hours.note} />
        <button
          type="button"
          className="icon-button"
          aria-label={hours.removeDay(date)}
          onClick={() => change([], withoutItem(content, PATH, index))}
        >
          <Trash2 size={20} aria-hidden />
        </button>
      </div>
      <SpansEditor path={[...path, 'spans']} day={date} />
    </div>
  );
}

/** The next day that has no hours of its own yet. */
function freeDate(today: string, taken: readonly string[]): string {
  let days = 1;
  while (taken.includes(dateAfter(today, days))) days += 1;
  return dateAfter(today, days);
}
