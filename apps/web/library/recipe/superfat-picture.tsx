import { scaleLinear } from 'd3-scale';
import type { ReactNode } from 'react';
import { useAmounts } from '../../look/amounts.js';
import { useWords } from '../../words/words.js';

const WIDTH = 320;
const HEIGHT = 34;

/** What lots at both ends of the published range are left with; below 0 lye would be left instead of fat. */
export function SuperfatPicture({
  low,
  used,
  high,
}: {
  readonly low: number;
  readonly used: number;
  readonly high: number;
}): ReactNode {
  const { library } = useWords();
  const { percent } = useAmounts();
  const x = scaleLinear([Math.min(-2, low - 1), Math.max(12, high + 1)], [4, WIDTH - 4]);
  const text = library.superfatRange(percent(low), percent(used), percent(high));
  return (
    <figure className="stack tight">
      <svg viewBox={`0 0 ${String(WIDTH)} ${String(HEIGHT)}`} className="superfat" aria-hidden>
        <rect x={0} y={8} width={x(0)} height={14} className="lye-side" />
        <line x1={x(0)} x2={x(0)} y1={2} y2={26} className="zero" />
        <rect x={x(low)} y={10} width={Math.max(2, x(high) - x(low))} height={10} rx={5} className="range" />
        <circle cx={x(used)} cy={15} r={6} className="likely" />
        {[0, 5, 10].map((tick) => (
          <text key={tick} x={x(tick)} y={HEIGHT - 1} textAnchor="middle">
            {percent(tick)}
          </text>
        ))}
      </svg>
      <figcaption className="small">{text}</figcaption>
    </figure>
  );
}
