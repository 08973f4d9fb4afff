import { useEffect, useRef, type KeyboardEvent, type ReactNode } from 'react';
import { Sentences } from '../look/sentence.js';
import { useTimes } from '../look/times.js';
import { useErrorText } from '../shell/states.js';
import type { Stretch } from '../look/local-days.js';
import { useWords } from '../words/words.js';
import type { Moving } from './use-moving.js';
import { useOddsPair } from './use-odds.js';

const STEP = 15 * 60_000;

/** Where a stage is held and what that does, with the ways to move it, keep it there or leave it. */
export function MovingPanel({
  moving,
  hours,
}: {
  readonly moving: Moving;
  readonly hours: readonly Stretch[];
}): ReactNode {
  const { moving: words } = useWords().tide;
  const { dayTime } = useTimes();
  const errorText = useErrorText();
  const panel = useRef<HTMLDivElement>(null);
  const { held, mark, answer, isTrying, error, refusal } = moving;
  const { isLifted } = moving;
  useEffect(() => {
    // Lifted by key or button: the arrow keys belong to it now. A finger that drags keeps what it has.
    if (isLifted) panel.current?.focus();
  }, [isLifted]);
  if (held === undefined || mark === undefined) return null;
  const to = (at: number): void => moving.drag(held.id, at);
  const leave = (): void => {
    moving.leave();
    document.querySelector<SVGGElement>(`[data-mark="${held.id}"]`)?.focus();
  };
  const opening = (by: 1 | -1): void => {
    const others =
      by === 1
        ? hours.filter(({ from }) => from > held.at)
        : hours.filter(({ from }) => from < held.at - STEP);
    const next = by === 1 ? others[0] : others.at(-1);
    if (next !== undefined) to(next.from);
  };
  const keyed = (event: KeyboardEvent): void => {
    const act = {
      ArrowLeft: () => to(held.at - STEP),
      ArrowRight: () => to(held.at + STEP),
      PageUp: () => opening(-1),
      PageDown: () => opening(1),
      Escape: leave,
    }[event.key];
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
  return (
    <div
      ref={panel}
      className="note stack tight"
      role="group"
      tabIndex={-1}
      aria-label={words.title(mark.stage.title)}
      onKeyDown={keyed}
    >
      <h3>{words.title(mark.stage.title)}</h3>
      <p className="small soft">{words.how}</p>
      <div aria-live="polite" className="run-moving">
        <p>
          <strong className="numbers">{dayTime(held.at)}</strong> <Told moving={moving} />
        </p>
        {error !== undefined && !isTrying && (
          <p className="note coral">
            <strong>{words.cannot}</strong> {errorText(error)}
          </p>
        )}
        {refusal.length > 0 && !isTrying && (
          <p className="note coral">
            <strong>{words.cannot}</strong> <Sentences of={refusal} />
          </p>
        )}
      </div>
      <div className="row">
        <button type="button" className="button" onClick={() => to(held.at - STEP)}>
          {words.back}
        </button>
        <button type="button" className="button" onClick={() => to(held.at + STEP)}>
          {words.on}
        </button>
        <button type="button" className="button" onClick={() => opening(-1)}>
          {words.lastSitting}
        </button>
        <button type="button" className="button" onClick={() => opening(1)}>
          {words.nextSitting}
        </button>
      </div>
      <div className="row">
        <button
          type="button"
          className="button main"
          disabled={
            isTrying ||
            moving.isKeeping ||
            error !== undefined ||
            refusal.length > 0 ||
            answer === undefined ||
            held.at === mark.at
          }
          onClick={moving.keep}
        >
          {words.keep}
        </button>
        <button type="button" className="button" onClick={leave}>
          {words.leave}
        </button>
      </div>
    </div>
  );
}

function Told({ moving }: { readonly moving: Moving }): ReactNode {
  const { moving: words } = useWords().tide;
  const oddsPair = useOddsPair();
  const { answer, isTrying, error, refusal, mark } = moving;
  if (isTrying) return <span className="soft">{words.trying}</span>;
  if (answer === undefined || error !== undefined || refusal.length > 0) return null;
  const others = answer.changes.filter(({ stage }) => stage !== mark?.stage.key).length;
  return (
    <>
      {words.odds(...oddsPair(answer.plan.odds?.soundByTheDay ?? null, moving.before?.soundByTheDay ?? null))}{' '}
      {words.moves(others)}
    </>
  );
}
