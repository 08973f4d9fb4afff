import { useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { useWords } from '../words/words.js';
import { COLOURS } from './ribbons.js';
import { LEVEL, POLE, type Frame } from './frame.js';
import { FLAG_HALF } from './flags.js';
import { useStageWords } from './stage-words.js';
import type { TideFlag, TideFlags } from './tide-flags.js';
import type { TideMark, TideRun } from './tide-run.js';

const RADIUS = 11;
/** A stage at which at least this share of runs is lost is marked. */
const RISKY = 0.05;
/** Pixels that a finger may tremble before it drags. */
const TREMBLE = 6;

export interface MarksProps {
  readonly tide: TideRun;
  readonly frame: Frame;
  readonly flags: TideFlags;
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

/** Stages as flags on their ribbons, with number and name, in order of the plan. */
export function Marks(props: MarksProps): ReactNode {
  const { tide, flags } = props;
  const { tide: words } = useWords();
  const next = tide.marks.find(({ stage }) => stage.status === 'planned')?.id;
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
          flag={flags.of.get(mark.id)}
          isNext={mark.id === next}
          onArrow={(event) => go(event, i)}
        />
      ))}
    </g>
  );
}

interface MarkProps extends MarksProps {
  readonly mark: TideMark;
  /** undefined: it is not in the picture. */
  readonly flag: TideFlag | undefined;
  readonly isNext: boolean;
  readonly onArrow: (event: KeyboardEvent<SVGGElement>) => void;
}

function Mark({ mark, flag, isNext, frame, selected, current, ...on }: MarkProps): ReactNode {
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
      className={`tide-mark tide-colour-${String((row % COLOURS) + 1)} ${stage.status}${movable ? ' movable' : ''}${isNext ? ' next' : ''}`}
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
      {flag !== undefined && (
        <FlagShape flag={flag} x={x(mark.at)} middle={middle} isRisky={mark.lost >= RISKY}>
          {stage.status === 'done' ? '✓' : stage.status === 'spoilt' ? '×' : String(number)}
        </FlagShape>
      )}
    </g>
  );
}

/** A pole on the ribbon, and on it the number and the name of a stage. */
function FlagShape({
  flag,
  x,
  middle,
  isRisky,
  children,
}: {
  readonly flag: TideFlag;
  readonly x: number;
  readonly middle: number;
  readonly isRisky: boolean;
  readonly children: string;
}): ReactNode {
  const { level, isLeft, width, name } = flag;
  const y = middle - POLE - level * LEVEL;
  const far = width - FLAG_HALF;
  return (
    <>
      <line x1={x} x2={x} y1={middle} y2={y} />
      <circle className="tide-exact" cx={x} cy={middle} r={3} />
      <rect
        className="tide-flag"
        x={isLeft ? x - far : x - FLAG_HALF}
        y={y - LEVEL / 2 + 1}
        width={width}
        height={LEVEL - 2}
        rx={LEVEL / 2 - 1}
      />
      <circle className="tide-buoy" cx={x} cy={y} r={RADIUS} />
      <text x={x} y={y + 4} textAnchor="middle">
        {children}
      </text>
      {isRisky && (
        <g className="tide-risk">
          <path d={`M${String(x - 11)} ${String(y - 16)} l7 12 h-14 z`} />
          <path className="tide-risk-sign" d={`M${String(x - 11)} ${String(y - 12)} v4 m0 2 v.5`} />
        </g>
      )}
      {/* A number and a name are two words, as they are in the label. */}{' '}
      {name !== '' && (
        <text
          className="tide-flag-name"
          x={isLeft ? x - FLAG_HALF - 3 : x + FLAG_HALF + 3}
          y={y + 4}
          textAnchor={isLeft ? 'end' : 'start'}
        >
          {name}
        </text>
      )}
    </>
  );
}
