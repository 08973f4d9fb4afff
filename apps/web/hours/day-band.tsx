import { useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { useWords } from '../words/words.js';
import { MINUTES_OF_DAY, minutesOf, STEP_MIN, withEdge, type Span } from './span-edits.js';

const HOUR = 60;

/** A day from midnight to midnight with the maker's hours as bands, whose ends are moved by finger, mouse or arrow keys. */
export function DayBand({
  day,
  spans,
  onSpans,
}: {
  readonly day: string;
  readonly spans: readonly Span[];
  readonly onSpans: (spans: readonly Span[]) => void;
}): ReactNode {
  const ref = useRef<HTMLDivElement>(null);
  const share = (time: string): string => `${String((100 * minutesOf(time)) / MINUTES_OF_DAY)}%`;
  return (
    <div className="day-band" ref={ref}>
      {spans.map((span, i) => (
        <div key={i}>
          <div
            className="open"
            style={{
              insetInlineStart: share(span.from),
              width: `calc(${share(span.to)} - ${share(span.from)})`,
            }}
          />
          {(['from', 'to'] as const).map((edge) => (
            <Handle
              key={edge}
              day={day}
              edge={edge}
              span={span}
              track={ref}
              place={share(span[edge])}
              onMove={(minutes) => onSpans(withEdge(spans, i, edge, minutes))}
            />
          ))}
        </div>
      ))}
    </div>
  );
}

/** Arrow keys move an end by a quarter of an hour, page keys by an hour. */
const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -STEP_MIN,
  ArrowDown: -STEP_MIN,
  ArrowRight: STEP_MIN,
  ArrowUp: STEP_MIN,
  PageDown: -HOUR,
  PageUp: HOUR,
};

function Handle({
  day,
  edge,
  span,
  track,
  place,
  onMove,
}: {
  readonly day: string;
  readonly edge: keyof Span;
  readonly span: Span;
  readonly track: { readonly current: HTMLElement | null };
  readonly place: string;
  readonly onMove: (minutes: number) => void;
}): ReactNode {
  const { hours } = useWords();
  const minutes = minutesOf(span[edge]);
  const byKey = (event: KeyboardEvent): void => {
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    onMove(minutes + step);
  };
  const byPointer = (event: PointerEvent<HTMLElement>): void => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const box = track.current?.getBoundingClientRect();
    if (box) onMove(((event.clientX - box.left) / box.width) * MINUTES_OF_DAY);
  };
  return (
    <span
      role="slider"
      tabIndex={0}
      className={`handle ${edge}`}
      style={{ insetInlineStart: place }}
      aria-label={edge === 'from' ? hours.begins(day) : hours.ends(day)}
      aria-valuemin={0}
      aria-valuemax={MINUTES_OF_DAY}
      aria-valuenow={minutes}
      aria-valuetext={span[edge]}
      onKeyDown={byKey}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={byPointer}
    />
  );
}
