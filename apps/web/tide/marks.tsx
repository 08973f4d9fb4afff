import { useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { useWords } from '../words/words.js';
import { COLOURS } from './ribbons.js';
import type { Frame } from './frame.js';
import { useStageWords } from './stage-words.js';
import { spread } from './spread.js';
import type { TideMark, TideRun } from './tide-run.js';

const RADIUS = 11;
/** Pixels that a finger may tremble before it drags. */
const TREMBLE = 6;

export interface MarksProps {
  readonly tide: TideRun;
  readonly frame: Frame;
  /** The stage whose details are shown. */
  readonly selected: string | undefined;
  /** The one stage that Tab reaches; arrow keys make it another. */
  readonly current: string | undefined;
  readonly onCurrent: (id: string) => void;
  readonly onSelect: (id: string) => void;
  /** Absent: stages cannot be moved. */
  readonly onLift?: ((id: string) => void) | undefined;
  readonly onDrag?: ((id: string, at: number) => void) | undefined;
}

/** Stages as numbered marks on their ribbons, in order of the plan. */
export function Marks(props: MarksProps): ReactNode {
  const { tide, frame } = props;
  const { tide: words } = useWords();
  const places = placesOf(tide, frame);
  const group = useRef<SVGGElement>(null);
  const go = (event: KeyboardEvent<SVGGElement>, from: number): void => {
    const to = { ArrowRight: from + 1, ArrowDown: from + 1, ArrowLeft: from - 1, ArrowUp: from - 1 }[
      event.key
    ];
    const end = { Home: 0, End: tide.marks.length - 1 }[event.key];
    const mark = tide.marks[end ?? to ?? -1];
    if (end === undefined && to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    if (mark === undefined) return;
    props.onCurrent(mark.id);
    group.current?.querySelector<SVGGElement>(`[data-mark="${mark.id}"]`)?.focus();
  };
  return (
    <g ref={group} role="group" aria-label={words.stages}>
      {tide.marks.map((mark, i) => (
        <Mark
          key={mark.id}
          {...props}
          mark={mark}
          place={places.get(mark.id)!}
          onArrow={(event) => go(event, i)}
        />
      ))}
    </g>
  );
}

interface MarkProps extends MarksProps {
  readonly mark: TideMark;
  /** Pixels from the left. */
  readonly place: number;
  readonly onArrow: (event: KeyboardEvent<SVGGElement>) => void;
}

function Mark({ mark, place, frame, selected, current, ...on }: MarkProps): ReactNode {
  const { x, y, at, width } = frame;
  const label = useStageWords().label(mark);
  const grip = useRef<{ readonly x: number; readonly from: number; moved: boolean } | null>(null);
  const { id, stage, row, number } = mark;
  const movable = stage.status === 'planned' && on.onDrag !== undefined;
  const middle = y(row);
  const down = (event: PointerEvent<SVGGElement>): void => {
    event.stopPropagation();
    if (event.button !== 0) return;
    grip.current = { x: event.clientX, from: x(mark.at), moved: false };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent<SVGGElement>): void => {
    const held = grip.current;
    if (held === null || !movable) return;
    const by = event.clientX - held.x;
    if (!held.moved && Math.abs(by) < TREMBLE) return;
    held.moved = true;
    on.onDrag?.(id, at(Math.min(Math.max(held.from + by, 0), width)));
  };
  const up = (): void => {
    if (grip.current?.moved === false) on.onSelect(id);
    grip.current = null;
  };
  return (
    <g
      className={`tide-mark tide-colour-${String((row % COLOURS) + 1)} ${stage.status}${movable ? ' movable' : ''}`}
      data-mark={id}
      role="button"
      tabIndex={current === id ? 0 : -1}
      aria-label={label}
      aria-pressed={selected === id}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={() => (grip.current = null)}
      onFocus={() => on.onCurrent(id)}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault();
          on.onSelect(id);
        } else if (event.key.toLowerCase() === 'm' && movable) on.onLift?.(id);
        else on.onArrow(event);
      }}
    >
      <line x1={x(mark.at)} x2={place} y1={middle} y2={middle - 24} />
      <circle className="tide-exact" cx={x(mark.at)} cy={middle} r={3} />
      <circle className="tide-ring" cx={place} cy={middle - 24} r={RADIUS + 4} />
      <circle className="tide-buoy" cx={place} cy={middle - 24} r={RADIUS} />
      <text x={place} y={middle - 20} textAnchor="middle">
        {stage.status === 'done' ? '✓' : stage.status === 'spoilt' ? '×' : String(number)}
      </text>
    </g>
  );
}

/** Marks on one ribbon that would lie over each other stand apart; a line leads to where they belong. */
function placesOf({ parts, marks }: TideRun, { x }: Frame): Map<string, number> {
  const places = new Map<string, number>();
  for (const row of [...parts.keys(), -1]) {
    const own = marks.filter((mark) => mark.row === row);
    spread(
      own.map(({ at }) => x(at)),
      2 * RADIUS + 3,
    ).forEach((place, i) => places.set(own[i]!.id, place));
  }
  return places;
}
