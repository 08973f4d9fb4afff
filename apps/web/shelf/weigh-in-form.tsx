import { useId, useState, type ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { readNumber, writeNumber } from '../form/numbers.js';
import { useAmounts } from '../look/amounts.js';
import { useLogEntry } from '../shell/use-log-entry.js';
import { Failed } from '../shell/states.js';
import { useLanguage, useWords } from '../words/words.js';
import { readWeighIn } from './read-weigh-in.js';

/** Takes down what is on the scales now. */
export function WeighInForm({
  lot,
  last,
  isCuring,
}: {
  readonly lot: Schemas['Lot'];
  /** The weigh-in before: the same pieces are weighed again. */
  readonly last: Schemas['CureCurve']['readings'][number] | undefined;
  readonly isCuring: boolean;
}): ReactNode {
  const { shelf } = useWords();
  const language = useLanguage();
  const { field } = useAmounts();
  const [pieces, setPieces] = useState(writeNumber(last?.pieces ?? Math.min(lot.count, 6), language));
  const [mass, setMass] = useState('');
  const [isTried, setTried] = useState(false);
  const log = useLogEntry(lot.runId);
  const read = readWeighIn(readNumber(pieces, language), readNumber(mass, language), field.mass.meant);
  return (
    <form
      className="stack tight weigh-now"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (read.entry === undefined) return;
        const entry = { ...read.entry, at: new Date(serverNow()).toISOString() };
        log.mutate(entry, {
          onSuccess: () => {
            setMass('');
            setTried(false);
          },
        });
      }}
    >
      <h4>{shelf.weighNow}</h4>
      {isCuring && <p className="note amber small">{shelf.gloves}</p>}
      <div className="fields">
        <Field
          label={shelf.howMany}
          hint={shelf.howManyHint}
          wrong={isTried && read.wrong.includes('pieces') ? shelf.wrongPieces : ''}
          mode="numeric"
          value={pieces}
          onChange={setPieces}
        />
        <Field
          label={shelf.together(field.mass.sign)}
          wrong={isTried && read.wrong.includes('mass') ? shelf.wrongMass : ''}
          mode="decimal"
          value={mass}
          onChange={setMass}
        />
      </div>
      <p>
        <button type="submit" className="button main" disabled={log.isPending}>
          {shelf.enter}
        </button>
      </p>
      <p role="status">
        {log.data?.status === 'waiting' && shelf.waiting}
        {log.data?.status === 'sent' && log.data.answer.why}
      </p>
      {log.error !== null && <Failed error={log.error} again={() => log.reset()} />}
    </form>
  );
}

function Field({
  label,
  hint,
  wrong,
  mode,
  value,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly wrong: string;
  readonly mode: 'numeric' | 'decimal';
  readonly value: string;
  readonly onChange: (text: string) => void;
}): ReactNode {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode={mode}
        autoComplete="off"
        value={value}
        aria-invalid={wrong !== ''}
        aria-describedby={`${id}-wrong ${id}-hint`}
        onChange={({ target }) => onChange(target.value)}
      />
      {hint !== undefined && (
        <p id={`${id}-hint`} className="soft small">
          {hint}
        </p>
      )}
      <p id={`${id}-wrong`} className="wrong">
        {wrong}
      </p>
    </div>
  );
}
