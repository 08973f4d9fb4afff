import type { ReactNode } from 'react';
import type { Frame } from './frame.js';
import type { TideRun } from './tide-run.js';

/** Where stages were before: an empty ring, and a line to where they are now. */
export function Ghosts({
  before,
  tide,
  frame,
}: {
  readonly before: TideRun;
  readonly tide: TideRun;
  readonly frame: Frame;
}): ReactNode {
  const { x, y } = frame;
  return (
    <g className="tide-ghosts" aria-hidden>
      {before.marks.map((was) => {
        const now = tide.marks.find(({ id }) => id === was.id);
        if (now !== undefined && now.at === was.at) return null;
        const part = before.parts[was.row]?.key;
        const row = now?.row ?? tide.parts.findIndex(({ key }) => key === part);
        if (row < 0) return null;
        return (
          <g key={was.id}>
            {now !== undefined && <line x1={x(was.at)} x2={x(now.at)} y1={y(row) + 20} y2={y(row)} />}
            <circle cx={x(was.at)} cy={y(row) + 20} r={5} />
          </g>
        );
      })}
    </g>
  );
}
