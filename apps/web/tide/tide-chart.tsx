import { CircleMinus, CirclePlus, MoveLeft, MoveRight } from 'lucide-react';
import { useId, useMemo, useState, type KeyboardEvent, type ReactNode } from 'react';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { Backdrop } from './backdrop.js';
import { HEAD, frameOf, type Frame } from './frame.js';
import { Ghosts } from './ghosts.js';
import { Legend } from './legend.js';
import type { Stretch } from '../look/local-days.js';
import { Marks } from './marks.js';
import { COLOURS, Ribbons } from './ribbons.js';
import { Sittings } from './sittings.js';
import './tide.css';
import type { TideRun } from './tide-run.js';
import { tideFlags } from './tide-flags.js';
import { useTouch } from './use-touch.js';
import { useView } from './use-view.js';
import { panned, showing, zoomed } from './view.js';

export interface TideChartProps {
  readonly tide: TideRun;
  /** The plan before, where the one drawn is tried or dragged. */
  readonly before?: TideRun | undefined;
  /** When the maker can be at the bench. */
  readonly hours: readonly Stretch[];
  /** IANA zone in which days are written. */
  readonly zone: string;
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly selected?: string | undefined;
  readonly onSelect: (id: string) => void;
  readonly onLift?: ((id: string) => void) | undefined;
  readonly onDrag?: ((id: string, at: number) => void) | undefined;
  /** Where a stage is held, and what is said of it there. */
  readonly held?: { readonly id: string; readonly at: number; readonly text: string } | undefined;
  /** What is said below the chart, such as the details of a stage. */
  readonly children?: ReactNode;
}

const CLOSER = 0.6;
const ON = 0.25;

/** The picture of a run; all of it is in the tide table too. */
export default function TideChart(props: TideChartProps): ReactNode {
  const { tide, before, hours, zone, now, selected, onSelect, onLift, onDrag, held, children } = props;
  const id = useId();
  const { tide: words } = useWords();
  const { dayTime } = useTimes();
  const [isSmall] = useState(() => window.matchMedia(SMALL).matches);
  const all = before === undefined ? tide.making : around(before.making, tide.making);
  const day = dayOf(tide, now);
  const control = useView(isSmall && before === undefined ? day : all, tide.whole);
  const { view, width, box, look } = control;
  const touch = useTouch(control, tide.whole);
  const [current, setCurrent] = useState(tide.marks.find(({ stage }) => stage.status === 'planned')?.id);
  const known = tide.marks.find((mark) => mark.id === current) ?? tide.marks[0];
  const flags = useMemo(() => tideFlags(tide, view, width), [tide, view, width]);
  const frame = useMemo(() => frameOf(view, width, flags.levels), [view, width, flags]);
  const middle = (view.from + view.to) / 2;
  const zoom = (factor: number): void => look((seen) => zoomed(seen, factor, middle, tide.whole));
  const pan = (share: number): void => look((seen) => panned(seen, share, tide.whole));
  const keyed = (event: KeyboardEvent<HTMLDivElement>): void => {
    const act = {
      '+': () => zoom(CLOSER),
      '=': () => zoom(CLOSER),
      '-': () => zoom(1 / CLOSER),
      ArrowLeft: () => pan(-ON),
      ArrowRight: () => pan(ON),
    }[event.key];
    if (act === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  };
  return (
    <figure className="tide" aria-labelledby={`${id}title`} aria-describedby={`${id}summary`}>
      <div className="row apart">
        <h2 id={`${id}title`}>{words.title}</h2>
        <div className="tide-tools row">
          <Tool name={words.earlier} icon={MoveLeft} act={() => pan(-ON)} />
          <Tool name={words.farther} icon={CircleMinus} act={() => zoom(1 / CLOSER)} />
          <Tool name={words.closer} icon={CirclePlus} act={() => zoom(CLOSER)} />
          <Tool name={words.later} icon={MoveRight} act={() => pan(ON)} />
          <button type="button" className="button plain" onClick={() => look(() => day)}>
            {words.day}
          </button>
          <button type="button" className="button plain" onClick={() => look(() => tide.making)}>
            {words.making}
          </button>
          <button type="button" className="button plain" onClick={() => look(() => tide.whole)}>
            {words.whole}
          </button>
        </div>
      </div>
      <p className="small soft">{words.how}</p>
      <p id={`${id}summary`} className="visually-hidden">
        {words.summary(
          tide.marks.length,
          tide.parts.length,
          dayTime(tide.marks[0]!.at),
          dayTime(tide.marks.at(-1)!.end),
        )}
      </p>
      <div
        ref={box}
        className="tide-box"
        tabIndex={0}
        role="group"
        aria-label={words.box}
        onKeyDown={keyed}
        {...touch}
      >
        {width > 0 && (
          <svg width={width} height={frame.height} viewBox={`0 0 ${String(width)} ${String(frame.height)}`}>
            <Backdrop frame={frame} zone={zone} hours={hours} />
            <Ribbons tide={tide} frame={frame} now={now} />
            <Sittings tide={tide} frame={frame} now={now} />
            <Names tide={tide} frame={frame} />
            {before !== undefined && <Ghosts before={before} tide={tide} frame={frame} />}
            <Marks
              {...{ tide, frame, flags, selected, onSelect, onLift, onDrag }}
              current={known?.id}
              onCurrent={(next) => {
                setCurrent(next);
                const mark = tide.marks.find((each) => each.id === next);
                if (mark !== undefined) look((seen) => showing(seen, mark.at, tide.whole));
              }}
            />
            {held !== undefined && <Held tide={tide} held={held} frame={frame} />}
          </svg>
        )}
      </div>
      {children}
      <Legend compared={before !== undefined} />
    </figure>
  );
}

/** As wide as the layout of a phone. */
const SMALL = '(width < 40rem)';
const HOUR = 3_600_000;

/** A day from shortly before what is done next, or from the last stage where all is done. */
function dayOf({ marks, whole }: TideRun, now: number): Stretch {
  const next = marks.find(({ stage }) => stage.status === 'planned');
  const at = next === undefined ? marks.at(-1)!.at : Math.max(next.at, Math.min(now, next.end));
  return showing({ from: at - 2 * HOUR, to: at + 22 * HOUR }, at, whole);
}

function around(a: Stretch, b: Stretch): Stretch {
  return { from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) };
}

function Tool({
  name,
  icon: Icon,
  act,
}: {
  readonly name: string;
  readonly icon: typeof MoveLeft;
  readonly act: () => void;
}): ReactNode {
  return (
    <button type="button" className="button plain tide-tool" aria-label={name} title={name} onClick={act}>
      <Icon size={20} aria-hidden />
    </button>
  );
}

/** What each ribbon is, above it at its left. */
function Names({ tide, frame }: { readonly tide: TideRun; readonly frame: Frame }): ReactNode {
  return (
    <g aria-hidden>
      {tide.parts.map(({ key, title }, row) => (
        <g key={key} className={`tide-part tide-colour-${String((row % COLOURS) + 1)}`}>
          {row > 0 && <line x1={0} x2={frame.width} y1={frame.top(row)} y2={frame.top(row)} />}
          <text className="tide-name" x={8} y={frame.top(row) + 16}>
            {title}
          </text>
        </g>
      ))}
    </g>
  );
}

/** The stage that is held, where it would be let go. */
function Held({
  tide,
  held,
  frame,
}: {
  readonly tide: TideRun;
  readonly held: NonNullable<TideChartProps['held']>;
  readonly frame: Frame;
}): ReactNode {
  const { dayTime } = useTimes();
  const mark = tide.marks.find(({ id }) => id === held.id);
  if (mark === undefined) return null;
  const x = frame.x(held.at);
  const end = x > frame.width / 2;
  return (
    <g className="tide-held" aria-hidden>
      <line x1={x} x2={x} y1={HEAD} y2={frame.height} />
      <circle cx={x} cy={frame.y(mark.row)} r={9} />
      <text x={end ? x - 8 : x + 8} y={HEAD + 14} textAnchor={end ? 'end' : 'start'}>
        {`${dayTime(held.at)} ${held.text}`}
      </text>
    </g>
  );
}
