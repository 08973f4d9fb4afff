import { scaleLog } from 'd3-scale';
import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { logDomain } from './clock-groups.js';

const WIDTH = 240;
const HEIGHT = 20;

/**
 * A band as a lens: thin at its ends, full where it is likely. All bands of a clock stand on one scale of
 * logarithms, so that they can be compared. Decoration: the sentence beside it says the same.
 */
export function BandPicture({
  band,
  of,
  closes,
}: {
  readonly band: Schemas['Band'];
  readonly of: readonly Schemas['Band'][];
  readonly closes: boolean;
}): ReactNode {
  const x = scaleLog(logDomain(of), [4, WIDTH - 4]);
  const [low, likely, high] = [x(band.low), x(band.likely), x(band.high)];
  const middle = HEIGHT / 2;
  const lens = [
    `M${String(low)},${String(middle)}`,
    `Q${String(likely)},${String(middle - 16)} ${String(high)},${String(middle)}`,
    `Q${String(likely)},${String(middle + 16)} ${String(low)},${String(middle)}Z`,
  ].join('');
  return (
    <svg viewBox={`0 0 ${String(WIDTH)} ${String(HEIGHT)}`} className="band" aria-hidden>
      <line x1={0} x2={WIDTH} y1={middle} y2={middle} className="line" />
      <path d={lens} className={closes ? 'lens closes' : 'lens'} />
      <circle cx={likely} cy={middle} r={3.5} className="likely" />
    </svg>
  );
}
