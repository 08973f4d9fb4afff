import { scaleLinear } from 'd3-scale';
import { area, curveMonotoneX, line } from 'd3-shape';
import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { lensPath } from '../look/lens.js';
import { useNow, useTimes } from '../look/times.js';
import { useWidth } from '../look/use-width.js';
import { useWords } from '../words/words.js';
import { CureLegend } from './cure-legend.js';
import { cureSpan } from './cure-scales.js';

const HEIGHT = 220;
const [TOP, RIGHT, BOTTOM, LEFT] = [12, 12, 46, 58];
const DAY_MS = 86_400_000;
/** Room that a date needs. */
const DATE_WIDTH = 92;

type Cure = Schemas['CureCurve'];

/** The mass of one piece over its cure: weigh-ins as drops, what they lead to expect as a line in its band. */
export function CurePicture({
  lot,
  cure,
  startedAt,
}: {
  readonly lot: Schemas['Lot'];
  readonly cure: Cure;
  readonly startedAt: string;
}): ReactNode {
  const { shelf } = useWords();
  const times = useTimes();
  const { field, number } = useAmounts();
  const now = useNow(60_000);
  const [ref, width] = useWidth();
  const start = Date.parse(startedAt);
  const today = Math.max(0, (now - start) / DAY_MS);
  const span = cureSpan(cure, today, (Date.parse(lot.ready.high) - start) / DAY_MS);
  const bottom = HEIGHT - BOTTOM;
  const x = scaleLinear()
    .domain(span.days)
    .range([LEFT, Math.max(LEFT + 1, width - RIGHT)]);
  const y = scaleLinear().domain(span.grams).range([bottom, TOP]);
  // Ticks are round in the unit the person uses, whatever the curve is in.
  const inUnit = scaleLinear().domain(span.grams.map(field.mass.shown)).range([bottom, TOP]);
  const masses = inUnit.ticks(3);
  const [low, likely, high] = [lot.ready.low, lot.ready.likely, lot.ready.high].map((at) =>
    clamp((Date.parse(at) - start) / DAY_MS, span.days),
  ) as [number, number, number];
  const dates = x
    .ticks(Math.max(2, Math.floor((width - LEFT) / DATE_WIDTH)))
    .filter((day) => Number.isInteger(day) && x(day) + DATE_WIDTH / 2 <= width);
  return (
    <figure className="cure-picture stack tight">
      <svg ref={ref} height={HEIGHT} role="img" aria-label={shelf.curveTitle(lot.title)}>
        {width > 0 && (
          <>
            <clipPath id={`plot-${lot.id}`}>
              <rect x={LEFT} y={0} width={Math.max(0, width - LEFT - RIGHT)} height={bottom} />
            </clipPath>
            {masses.map((mass, i) => (
              <g key={mass}>
                <path
                  className="grid"
                  d={`M${String(LEFT)} ${String(inUnit(mass))}H${String(width - RIGHT)}`}
                />
                <text x={LEFT - 6} y={inUnit(mass) + 4} textAnchor="end">
                  {number(mass, 2)}
                  {i === masses.length - 1 && ` ${field.mass.sign}`}
                </text>
              </g>
            ))}
            {dates.map((day) => (
              <text key={day} x={x(day)} y={HEIGHT - 6} textAnchor="middle">
                {times.day(start + day * DAY_MS)}
              </text>
            ))}
            <g clipPath={`url(#plot-${lot.id})`}>
              <Expected curve={cure.curve} x={x} y={y} today={today} />
            </g>
            <path className="now" d={`M${String(x(today))} ${String(TOP)}V${String(bottom)}`} />
            <path className="lens" d={lensPath(x(low), x(likely), x(high), bottom + 10, 8)} />
            {cure.readings.map((reading) => (
              <circle
                key={reading.entry}
                className={reading.counts ? 'weighed' : 'left-out'}
                cx={x(reading.days)}
                cy={y(reading.pieceG)}
                r={5}
              />
            ))}
          </>
        )}
      </svg>
      <CureLegend cure={cure} />
    </figure>
  );
}

type Scale = ReturnType<typeof scaleLinear<number, number>>;

/** The band, and in it the likely course: whole where it has been, broken where it is to come. */
function Expected({
  curve,
  x,
  y,
  today,
}: {
  readonly curve: Cure['curve'];
  readonly x: Scale;
  readonly y: Scale;
  readonly today: number;
}): ReactNode {
  type Point = Cure['curve'][number];
  const band = area<Point>()
    .x(({ days }) => x(days))
    .y0(({ pieceG }) => y(pieceG.low))
    .y1(({ pieceG }) => y(pieceG.high))
    .curve(curveMonotoneX);
  const course = line<Point>()
    .x(({ days }) => x(days))
    .y(({ pieceG }) => y(pieceG.likely))
    .curve(curveMonotoneX);
  const next = curve.findIndex(({ days }) => days > today);
  const split = next < 0 ? curve.length : next + 1;
  return (
    <>
      <path className="band" d={band([...curve]) ?? ''} />
      <path className="course" d={course(curve.slice(0, split)) ?? ''} />
      <path className="course to-come" d={course(curve.slice(Math.max(0, split - 1))) ?? ''} />
    </>
  );
}

function clamp(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(high, Math.max(low, value));
}
