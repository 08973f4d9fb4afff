import { memo, type ReactNode } from 'react';
import { useTimes } from '../look/times.js';
import { localDays, nights, wallTimes, type Stretch } from '../look/local-days.js';
import { HEAD, type Frame } from './frame.js';
import { timeStep } from './view.js';

const DAY = 24 * 60 * 60_000;
/** Pixels that a day takes at least, for its night and hours to be drawn. */
const NEAREST = 30;

/** What lies behind the ribbons: nights, working hours, the days and times that are written above. */
export const Backdrop = memo(function Backdrop({
  frame,
  zone,
  hours,
}: {
  readonly frame: Frame;
  readonly zone: string;
  readonly hours: readonly Stretch[];
}): ReactNode {
  const { x, view, height } = frame;
  const span = ({ from, to }: Stretch): { readonly x: number; readonly width: number } => ({
    x: x(from),
    width: Math.max(0, x(to) - x(from)),
  });
  // Of weeks, nights and hours would be a grating that says nothing.
  const isNear = frame.width / ((view.to - view.from) / DAY) >= NEAREST;
  const shown = isNear ? hours.filter(({ from, to }) => to > view.from && from < view.to) : [];
  return (
    <g aria-hidden>
      {(isNear ? nights(view, zone) : []).map((night) => (
        <rect key={night.from} className="tide-night" y={HEAD} height={height - HEAD} {...span(night)} />
      ))}
      {shown.map((open) => (
        <rect key={open.from} className="tide-hours" y={HEAD} height={height - HEAD} rx={6} {...span(open)} />
      ))}
      <path className="tide-surface" d={surface(frame)} />
      <Days frame={frame} zone={zone} />
    </g>
  );
});

/** The line between the days above and the water below. */
function surface({ width }: Frame): string {
  const waves = Array.from({ length: Math.ceil(width / 24) }, () => 'q6 -5 12 0 t12 0').join(' ');
  return `M0 ${String(HEAD)} ${waves}`;
}

function Days({ frame, zone }: { readonly frame: Frame; readonly zone: string }): ReactNode {
  const { x, view, width, height } = frame;
  const times = useTimes();
  const step = timeStep(view, width);
  const days = localDays(view, zone);
  const wide = width / days.length;
  const every = wide > 26 ? 1 : 7;
  return (
    <>
      {days.map((day, i) => {
        const left = Math.max(0, x(day.from));
        const room = Math.min(width, x(day.to)) - left;
        const text = wide > 84 ? times.day(day.from) : String(Number(day.date.slice(8)));
        const written = every === 1 ? room > (wide > 84 ? 74 : 18) : i % every === 0 && left + 60 < width;
        return (
          <g key={day.from}>
            <line className="tide-day" x1={x(day.from)} x2={x(day.from)} y1={4} y2={height} />
            {written && (
              <text className="tide-date" x={left + 5} y={16}>
                {every === 1 ? text : times.day(day.from)}
              </text>
            )}
          </g>
        );
      })}
      {step !== undefined &&
        wallTimes(view, zone, step).map((at) => (
          <text key={at} className="tide-time" x={x(at) + 5} y={HEAD - 12}>
            {times.time(at)}
          </text>
        ))}
    </>
  );
}
