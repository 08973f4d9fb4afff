import { area, curveMonotoneX } from 'd3-shape';
import { memo, useId, type ReactNode } from 'react';
import type { RibbonPoint } from './firmness.js';
import { HEAD, THICKEST, type Frame } from './frame.js';
import { lensShape, type LensPoint } from './lens.js';
import type { TideMark, TideRun } from './tide-run.js';

/** Ribbon colours of look/tokens.css. */
export const COLOURS = 5;

/** One ribbon for each part, with the windows of its stages on it; solid up to now, translucent after. */
export const Ribbons = memo(function Ribbons({
  tide,
  frame,
  now,
}: {
  readonly tide: TideRun;
  readonly frame: Frame;
  readonly now: number;
}): ReactNode {
  const id = useId();
  const { x, y, width, height } = frame;
  const split = Math.min(Math.max(x(now), 0), width);
  return (
    <g aria-hidden>
      <clipPath id={`${id}done`}>
        <rect x={0} y={HEAD} width={split} height={height} />
      </clipPath>
      <clipPath id={`${id}ahead`}>
        <rect x={split} y={HEAD} width={width - split} height={height} />
      </clipPath>
      {(['done', 'ahead'] as const).map((side) => (
        <g key={side} className={`tide-${side}`} clipPath={`url(#${id}${side})`}>
          {tide.parts.map((part, row) => (
            <g key={part.key} className={`tide-ribbon tide-colour-${String((row % COLOURS) + 1)}`}>
              {part.edges.map(({ z, points }) => (
                <path key={z} d={ribbon(points, x, y(row))} />
              ))}
            </g>
          ))}
        </g>
      ))}
      {tide.marks.map(
        (mark) => mark.stage.status === 'planned' && <Lens key={mark.id} {...{ mark, frame }} />,
      )}
    </g>
  );
});

function Lens({ mark, frame }: { readonly mark: TideMark; readonly frame: Frame }): ReactNode {
  const { x, y, view } = frame;
  const { stage, row } = mark;
  const shape = lensShape(
    {
      opens: Date.parse(stage.opensAt),
      best: Date.parse(stage.bestAt),
      lastCall: instant(stage.lastCallAt),
      surelyOpen: instant(stage.surelyOpenAt),
      surelyUntil: instant(stage.surelyUntil),
    },
    view.to,
  );
  return (
    <path className={`tide-lens tide-colour-${String((row % COLOURS) + 1)}`} d={lens(shape, x, y(row))} />
  );
}

function ribbon(points: readonly RibbonPoint[], x: Frame['x'], middle: number): string {
  const half = ({ thickness }: RibbonPoint): number => (thickness * THICKEST) / 2;
  const draw = area<RibbonPoint>()
    .x((point) => x(point.at))
    .y0((point) => middle - half(point))
    .y1((point) => middle + half(point))
    .curve(curveMonotoneX);
  return draw([...points]) ?? '';
}

/** A lens that is narrower than this could not be seen. */
const NARROWEST = 6;

function lens(shape: readonly LensPoint[], x: Frame['x'], middle: number): string {
  const [first, last] = [x(shape[0]!.at), x(shape.at(-1)!.at)];
  const stretch = Math.max(1, NARROWEST / Math.max(0.01, last - first));
  const draw = area<LensPoint>()
    .x((point) => first + (x(point.at) - first) * stretch)
    .y0((point) => middle - (point.fullness * THICKEST) / 2.8)
    .y1((point) => middle + (point.fullness * THICKEST) / 2.8)
    .curve(curveMonotoneX);
  return draw([...shape]) ?? '';
}

function instant(text: string | null): number | null {
  return text === null ? null : Date.parse(text);
}
