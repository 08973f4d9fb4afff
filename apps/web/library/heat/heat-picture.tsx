import { scaleLinear } from 'd3-scale';
import { curveMonotoneX, line } from 'd3-shape';
import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useAmounts } from '../../look/amounts.js';
import { lensPath } from '../../look/lens.js';
import { useTexts } from '../../look/use-texts.js';
import { useWidth } from '../../look/use-width.js';
import { useWords } from '../../words/words.js';
import { HeatLegend } from './heat-legend.js';
import { heatSpan, timeMarks } from './heat-scales.js';

const HEIGHT = 220;
const [TOP, RIGHT, BOTTOM, LEFT] = [12, 16, 30, 52];
/** Room that a time needs. */
const TIME_WIDTH = 56;

type Heat = Schemas['PartHeat'];

/** The temperature of a poured part in its middle and at its edge, with what it is measured against. */
export function HeatPicture({ heat, title }: { readonly heat: Heat; readonly title: string }): ReactNode {
  const words = useWords().heat;
  const { duration } = useTexts();
  const { field, number } = useAmounts();
  const [ref, width] = useWidth();
  const span = heatSpan(heat);
  const [right, bottom] = [Math.max(LEFT + 1, width - RIGHT), HEIGHT - BOTTOM];
  const x = scaleLinear().domain(span.min).range([LEFT, right]);
  const y = scaleLinear().domain(span.celsius).range([bottom, TOP]);
  // Marks are round in the unit the person uses, whatever the curve is in.
  const inUnit = scaleLinear().domain(span.celsius.map(field.temperature.shown)).range([bottom, TOP]);
  const degrees = inUnit.ticks(4);
  const course = (of: 'middleC' | 'edgeC'): string =>
    line<Heat['curve'][number]>()
      .x(({ min }) => x(min))
      .y((point) => y(point[of]))
      .curve(curveMonotoneX)([...heat.curve]) ?? '';
  const across = (celsius: number): string => `M${String(LEFT)} ${String(y(celsius))}H${String(right)}`;
  const { low, likely, high } = heat.hottestC;
  return (
    <figure className="heat-picture stack tight">
      <svg ref={ref} height={HEIGHT} role="img" aria-label={words.picture(title)}>
        {width > 0 && (
          <>
            {degrees.map((mark, i) => (
              <g key={mark}>
                <path className="grid" d={`M${String(LEFT)} ${String(inUnit(mark))}H${String(right)}`} />
                <text x={LEFT - 6} y={inUnit(mark) + 4} textAnchor="end">
                  {number(mark, 0)}
                  {i === degrees.length - 1 && ` ${field.temperature.sign}`}
                </text>
              </g>
            ))}
            {timeMarks(span.min[1], Math.max(1, Math.floor((right - LEFT) / TIME_WIDTH))).map((min) => (
              <g key={min}>
                <path className="grid" d={`M${String(x(min))} ${String(bottom)}v6`} />
                <text x={x(min)} y={HEIGHT - 8} textAnchor="middle">
                  {duration(min, span.min[1])}
                </text>
              </g>
            ))}
            <path className="around" d={across(heat.aroundC)} />
            {!heat.isMade && <path className="gel" d={across(heat.gelC)} />}
            {/* A lens lies along the picture; this one stands, its two axes exchanged. */}
            {heat.hottestMin > 0 && (
              <path
                className="lens"
                transform="matrix(0 1 1 0 0 0)"
                d={lensPath(y(high), y(likely), y(low), x(heat.hottestMin), 9)}
              />
            )}
            <path className="edge" d={course('edgeC')} />
            <path className="middle" d={course('middleC')} />
          </>
        )}
      </svg>
      <HeatLegend heat={heat} />
    </figure>
  );
}
