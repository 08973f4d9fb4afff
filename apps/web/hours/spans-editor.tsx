import { useTexts } from '../look/use-texts.js';
import { Plus, Trash2 } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { fieldId, useForm } from '../form/form-context.js';
import { listAt, type Path } from '../form/values.js';
import { useWords } from '../words/words.js';
import { pathText } from '#units';
import { DayBand } from './day-band.js';
import { freeSpan, joined, overMidnight, readTime, type Span } from './span-edits.js';

/** The hours of one day: a band to move, times to type, and one more. */
export function SpansEditor({
  path,
  day,
  onNext,
}: {
  readonly path: Path;
  readonly day: string;
  /** Takes what runs past midnight over to the next day; absent: there is none that is known. */
  readonly onNext?: (today: readonly Span[], tomorrow: Span) => void;
}): ReactNode {
  const { hours } = useWords();
  const { content, change } = useForm();
  const spans = listAt(content, path) as unknown as readonly Span[];
  const set = (next: readonly Span[]): void => change(path, next as never);
  const free = freeSpan(spans);
  return (
    <div className="stack tight" id={fieldId(path)} tabIndex={-1}>
      <DayBand day={day} spans={spans} onSpans={set} />
      <div className="row spans">
        {spans.length === 0 && <span className="soft">{hours.notAtAll}</span>}
        {spans.map((span, i) => (
          <SpanFields
            key={i}
            path={[...path, i]}
            day={day}
            span={span}
            onSpan={(next) => set(spans.map((each, j) => (i === j ? next : each)))}
            onDone={() => set(joined(spans))}
            onRemove={() => set(spans.filter((_, j) => i !== j))}
            onSplit={
              onNext &&
              (() => {
                const { today, tomorrow } = overMidnight(span);
                onNext(joined(spans.map((each, j) => (i === j ? today : each))), tomorrow);
              })
            }
          />
        ))}
        {free !== undefined && (
          <button
            type="button"
            className="icon-button"
            aria-label={hours.addSpan(day)}
            onClick={() => set(joined([...spans, free]))}
          >
            <Plus size={22} aria-hidden />
          </button>
        )}
      </div>
    </div>
  );
}

function SpanFields({
  path,
  day,
  span,
  onSpan,
  onDone,
  onRemove,
  onSplit,
}: {
  readonly path: Path;
  readonly day: string;
  readonly span: Span;
  readonly onSpan: (span: Span) => void;
  readonly onDone: () => void;
  readonly onRemove: () => void;
  readonly onSplit: (() => void) | undefined;
}): ReactNode {
  const { hours } = useWords();
  const texts = useTexts();
  const { issues } = useForm();
  const wrong = issues.filter((issue) => pathText(issue.path).startsWith(pathText(path)));
  const isNight = span.to <= span.from;
  return (
    <div className="span">
      <TimeInput
        id={fieldId([...path, 'from'])}
        label={hours.begins(day)}
        value={span.from}
        onDone={onDone}
        onValue={(from) => onSpan({ ...span, from })}
      />
      <span aria-hidden>–</span>
      <TimeInput
        id={fieldId([...path, 'to'])}
        label={hours.ends(day)}
        value={span.to}
        onDone={onDone}
        isEnd
        onValue={(to) => onSpan({ ...span, to })}
      />
      <button
        type="button"
        className="icon-button"
        aria-label={hours.removeSpan(day, `${span.from}–${span.to}`)}
        onClick={onRemove}
      >
        <Trash2 size={18} aria-hidden />
      </button>
      {isNight && (
        <div className="note amber small stack tight" role="status">
          <p>{hours.pastMidnight}</p>
          {onSplit !== undefined && (
            <button type="button" className="button" onClick={onSplit}>
              {hours.split}
            </button>
          )}
        </div>
      )}
      {!isNight && wrong.length > 0 && <p className="wrong small">{wrong.map(texts.issue).join(' ')}</p>}
    </div>
  );
}

/** A time of day as it is typed, of 24 hours: 9, 930, 9:30 and 24:00 are all read. */
export function TimeInput({
  id,
  label,
  value,
  isEnd = false,
  onValue,
  onDone,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** An end may be 24:00, and midnight means just that. */
  readonly isEnd?: boolean;
  readonly onValue: (value: string) => void;
  readonly onDone?: () => void;
}): ReactNode {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <input
      id={id}
      aria-label={label}
      className="time numbers"
      inputMode="numeric"
      autoComplete="off"
      value={typed ?? value}
      onFocus={({ target }) => target.select()}
      onChange={({ target }) => {
        setTyped(target.value);
        const read = readTime(target.value, isEnd);
        if (read !== undefined) onValue(read);
      }}
      onBlur={() => {
        // What was no time leaves the last one standing.
        setTyped(null);
        onDone?.();
      }}
    />
  );
}
