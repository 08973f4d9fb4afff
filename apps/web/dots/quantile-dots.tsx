import { scaleLinear } from 'd3-scale';
import type { ReactNode } from 'react';
import type { Stretch } from '../look/local-days.js';
import { Sign } from '../look/sign.js';
import { useTimes } from '../look/times.js';
import { useWidth } from '../look/use-width.js';
import { isNearTo, shownHours, ticksOf, viewOf } from './axis.js';
import { dotPlaces } from './dot-places.js';
import './dots.css';
import { useDotsWords } from './dots-words.js';

const SIZE = 14;
const TOP = 18;
const BELOW = 22;
const LEAST_LEVELS = 3;

/**
 * A forecast as dots over its times, each as likely as the next (quantile dot plots: Kay, Kola, Hullman, Munson, CHI 2016; Fernandes,
 * Walls, Munson, Hullman, Kay, CHI 2018). What it shows has to stand beside it in words.
 * @param times ascending, milliseconds since 1970
 */
export function QuantileDots({
  times,
  closes = false,
  hours,
  zone,
  mark,
}: {
  readonly times: readonly number[];
  /** Whether something is over at the times; else it begins. */
  readonly closes?: boolean;
  /** When the maker can be at the bench. */
  readonly hours: readonly Stretch[];
  readonly zone: string;
  /** What is asked about: dots that lie on its good side are full. */
  readonly mark: { readonly at: number; readonly text: string };
}): ReactNode {
  const words = useDotsWords();
  const written = useTimes();
  const [ref, width] = useWidth();
  const view = viewOf(times, mark.at);
  const x = scaleLinear([view.from, view.to], [0, width]);
  const places = dotPlaces(times, x, SIZE);
  const levels = Math.max(LEAST_LEVELS, ...places.map(({ level }) => level + 1));
  const ground = TOP + levels * SIZE + 2;
  const isMarked = isNearTo(times, mark.at);
  const isLeft = x(mark.at) > width / 2;
  const open = shownHours(hours, view, width);
  return (
    <figure className="dots">
      <svg ref={ref} height={ground + BELOW} aria-hidden>
        {width > 0 && (
          <>
            {open.map(({ from, to }) => (
              <rect
                key={from}
                className="dots-hours"
                x={x(from)}
                y={TOP}
                width={x(to) - x(from)}
                height={ground - TOP}
              />
            ))}
            <path className="dots-ground" d={`M0 ${String(ground)}H${String(width)}`} />
            {ticksOf(view, width, zone).map(({ at, isDay }) => (
              <g key={at}>
                <path className="dots-tick" d={`M${String(x(at))} ${String(TOP)}V${String(ground + 6)}`} />
                {x(at) + (isDay ? 70 : 40) < width && (
                  <text x={x(at) + 4} y={ground + 16}>
                    {isDay ? written.day(at) : written.time(at)}
                  </text>
                )}
              </g>
            ))}
            {places.map((place) => (
              <circle
                key={`${String(place.at)} ${String(place.level)}`}
                className={place.at <= mark.at === !closes ? 'dots-full' : 'dots-hollow'}
                cx={place.x}
                cy={ground - 1 - (place.level + 0.5) * SIZE}
                r={SIZE / 2 - 1.5}
              />
            ))}
            {isMarked && (
              <g className="dots-mark">
                <path d={`M${String(x(mark.at))} ${String(TOP - 4)}V${String(ground)}`} />
                <text x={x(mark.at) + (isLeft ? -4 : 4)} y={TOP - 5} textAnchor={isLeft ? 'end' : 'start'}>
                  {mark.text}
                </text>
              </g>
            )}
          </>
        )}
      </svg>
      <figcaption className="row small soft">
        <Sign text={words.full}>
          <circle className="dots-full" cx="12" cy="8" r="5.5" />
        </Sign>
        <Sign text={words.hollow}>
          <circle className="dots-hollow" cx="12" cy="8" r="5.5" />
        </Sign>
        {open.length > 0 && (
          <Sign text={words.hours}>
            <rect className="dots-hours" x="1" y="2" width="22" height="12" />
          </Sign>
        )}
      </figcaption>
    </figure>
  );
}
