import { memo, type ReactNode } from 'react';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { HEAD, type Frame } from './frame.js';
import type { TideRun } from './tide-run.js';

/** Sittings as strips from the surface to the ground, the day of the cure, and the present. */
export const Sittings = memo(function Sittings({
  tide,
  frame,
  now,
}: {
  readonly tide: TideRun;
  readonly frame: Frame;
  readonly now: number;
}): ReactNode {
  const { x, width, height, view } = frame;
  const { tide: words } = useWords();
  const times = useTimes();
  const { ready } = tide;
  const strips = tide.sittings.filter(({ from, to }) => to > view.from && from < view.to);
  return (
    <g aria-hidden>
      {strips.map(({ from, to }) => {
        const wide = Math.max(3, x(to) - x(from));
        return (
          <g key={from}>
            <rect
              className="tide-sitting"
              x={x(from)}
              y={HEAD - 6}
              width={wide}
              height={height - HEAD}
              rx={4}
            />
            {wide > 96 && (
              <text className="tide-time" x={x(from) + 6} y={height - 12}>
                {`${times.time(from)}–${times.time(to)}`}
              </text>
            )}
          </g>
        );
      })}
      {ready !== null && ready.low < view.to && (
        <g className="tide-ready">
          <path d={shore(frame, ready)} />
          {x(ready.likely) > 0 && x(ready.likely) < width && (
            <text
              x={x(ready.likely)}
              y={height - 26}
              textAnchor={x(ready.likely) > width - 90 ? 'end' : 'middle'}
            >
              {words.cured(times.day(ready.likely))}
            </text>
          )}
        </g>
      )}
      {now >= view.from && now <= view.to && (
        <g className="tide-now">
          <line x1={x(now)} x2={x(now)} y1={HEAD - 10} y2={height} />
          <path d={`M${String(x(now) - 5)} ${String(HEAD - 14)} h10 l-5 9 z`} />
          <text x={x(now) + 7} y={height - 12}>
            {words.now}
          </text>
        </g>
      )}
    </g>
  );
});

/** The ground rises where the lot becomes ready, most where that is likely. */
function shore({ x, height }: Frame, ready: NonNullable<TideRun['ready']>): string {
  const [low, likely, high] = [x(ready.low), x(ready.likely), x(ready.high)].map(String);
  const [ground, top] = [String(height), String(height - 20)];
  return `M${low!} ${ground} Q${likely!} ${String(height - 40)} ${high!} ${ground} Z M${likely!} ${top} V${ground}`;
}
