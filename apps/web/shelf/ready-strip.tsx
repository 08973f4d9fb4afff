import { scaleLinear } from 'd3-scale';
import type { ReactNode } from 'react';
import type { Schemas } from '../api/client.js';
import { lensPath } from '../look/lens.js';
import { useTimes } from '../look/times.js';
import { useWidth } from '../look/use-width.js';

/** A stretch of time in milliseconds. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

const HEIGHT = 64;
const MIDDLE = 30;
const EDGE = 6;
const WEEK_MS = 7 * 86_400_000;

/**
 * The cure of a lot on the time that all lots on the shelf share: what has passed, what is to come, and the days on which
 * it will be ready as a lens. The text beside it says the same, so it is hidden from readers.
 */
export function ReadyStrip({
  lot,
  now,
  span,
}: {
  readonly lot: Pick<Schemas['Lot'], 'madeAt' | 'ready'>;
  readonly now: number;
  readonly span: Span;
}): ReactNode {
  const times = useTimes();
  const [ref, width] = useWidth();
  const x = scaleLinear()
    .domain([span.from, span.until])
    .range([EDGE, Math.max(EDGE, width - EDGE)]);
  const [made, low, likely, high] = [lot.madeAt, lot.ready.low, lot.ready.likely, lot.ready.high].map((at) =>
    x(Date.parse(at)),
  ) as [number, number, number, number];
  const sofar = Math.min(x(now), high);
  const weeks = Array.from(
    { length: Math.floor((span.until - span.from) / WEEK_MS) + 1 },
    (_, i) => span.from + i * WEEK_MS,
  );
  return (
    <svg ref={ref} className="ready-strip" height={HEIGHT} aria-hidden>
      {width > 0 && (
        <>
          {weeks.map((week) => (
            <path key={week} className="tick" d={`M${String(x(week))} ${String(MIDDLE - 3)}v6`} />
          ))}
          <path className="to-come" d={`M${String(made)} ${String(MIDDLE)}H${String(high)}`} />
          <path className="past" d={`M${String(made)} ${String(MIDDLE)}H${String(sofar)}`} />
          <path className="lens" d={lensPath(low, likely, high, MIDDLE, 15)} />
          <path className="most-likely" d={`M${String(likely)} ${String(MIDDLE - 15)}v30`} />
          <path className="now" d={`M${String(x(now))} 4v${String(HEIGHT - 24)}`} />
          <text x={made} y={HEIGHT - 3} textAnchor="start">
            {times.day(lot.madeAt)}
          </text>
          {likely - made > 170 && (
            <text x={Math.min(likely, width - 48)} y={HEIGHT - 3} textAnchor="middle">
              {times.day(lot.ready.likely)}
            </text>
          )}
        </>
      )}
    </svg>
  );
}
