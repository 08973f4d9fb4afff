import { useId, useState, type ReactNode } from 'react';
import type { LogEntry } from '#contract';
import { ApiError, type Schemas } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { readNumber, writeNumber } from '../form/numbers.js';
import { useAmounts } from '../look/amounts.js';
import { isAskedBack } from '../offline/asked-back.js';
import { useLogEntry } from '../offline/use-log-entry.js';
import { Failed } from '../shell/states.js';
import { Sentences } from '../look/sentence.js';
import { useLanguage, useWords } from '../words/words.js';
import { likelyMeant } from './likely-slip.js';
import { readWeighIn } from './read-weigh-in.js';

type WeighIn = NonNullable<ReturnType<typeof readWeighIn>['entry']>;

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
  const { field, mass: massText } = useAmounts();
  const [pieces, setPieces] = useState(writeNumber(last?.pieces ?? Math.min(lot.count, 6), language));
  const [mass, setMass] = useState('');
  const [isTried, setTried] = useState(false);
  const log = useLogEntry(lot.runId);
  const read = readWeighIn(readNumber(pieces, language), readNumber(mass, language), field.mass.meant);
  const send = (entry: WeighIn): void =>
    log.mutate(
      { ...entry, at: new Date(serverNow()).toISOString() },
      {
        onSuccess: () => {
          setMass('');
          setTried(false);
        },
      },
    );
  const expected = expectedIn(log.error) ?? last?.pieceG;
  const meant =
    read.entry === undefined || expected === undefined
      ? undefined
      : likelyMeant(read.entry.massG, expected * read.entry.pieces);
  return (
    <form
      className="stack tight weigh-now"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (read.entry !== undefined) send(read.entry);
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
        {log.data?.status === 'sent' && <Sentences of={log.data.answer.why} />}
      </p>
      {log.error !== null && !isDoubt(log.error) && <Failed error={log.error} again={() => log.reset()} />}
      {read.entry !== undefined && isDoubt(log.error) && isSame(log.variables, read.entry) && (
        <div role="alert" className="note amber stack tight">
          <p>
            {shelf.doubtful(massText(read.entry.massG / read.entry.pieces))}{' '}
            {last !== undefined && shelf.doubtfulLast(massText(last.pieceG))}
          </p>
          <p className="row">
            {meant !== undefined && (
              <button
                type="button"
                className="button main"
                disabled={log.isPending}
                onClick={() => read.entry !== undefined && send({ ...read.entry, massG: meant })}
              >
                {shelf.meant(massText(meant))}
              </button>
            )}
            <button
              type="button"
              className="button"
              disabled={log.isPending}
              onClick={() => read.entry !== undefined && send({ ...read.entry, confirmed: true })}
            >
              {shelf.asWeighed}
            </button>
          </p>
        </div>
      )}
    </form>
  );
}

/** Whether the API asks back rather than refuses: the mass is hard to believe. */
function isDoubt(error: Error | null): boolean {
  const issues = error instanceof ApiError ? (error.problem?.issues ?? []) : [];
  return isAskedBack(issues);
}

/** What a piece was expected to weigh, in grams, by the question that was asked back. */
function expectedIn(error: Error | null): number | undefined {
  const issues = error instanceof ApiError ? (error.problem?.issues ?? []) : [];
  const each = issues.flatMap(({ data }) =>
    Number((data as { expectedEachG?: unknown })?.expectedEachG ?? NaN),
  );
  return each.find((grams) => grams > 0);
}

/** Whether the fields still hold what was asked about. */
function isSame(asked: LogEntry | undefined, { pieces, massG }: WeighIn): boolean {
  return asked?.kind === 'weigh-in' && asked.pieces === pieces && asked.massG === massG;
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
