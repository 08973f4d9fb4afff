import { scaleLog } from 'd3-scale';
import type { ReactNode } from 'react';
import { lensPath } from '../look/lens.js';
import { useWidth } from '../look/use-width.js';
import { useLessonsWords } from './lessons-words.js';
import type { Lesson } from './lesson-facts.js';

const HEIGHT = 84;
const EDGE = 4;
const ROW = 30;

type Band = Lesson['factor'];

/**
 * What a forecast is multiplied by, before and with the log, as lenses about the usual; equal ratios are equal lengths.
 * The words below say the same, so it is hidden from readers.
 */
export function BandPicture({
  before,
  now,
  range,
}: {
  readonly before: Band;
  readonly now: Band;
  readonly range: readonly [number, number];
}): ReactNode {
  const { axis } = useLessonsWords();
  const [ref, width] = useWidth();
  const x = scaleLog()
    .domain(range)
    .range([EDGE, Math.max(EDGE + 1, width - EDGE)]);
  const lens = ({ low, likely, high }: Band, half: number): string =>
    lensPath(x(low), x(likely), x(high), ROW, half);
  return (
    <svg ref={ref} className="band-picture" height={HEIGHT} aria-hidden>
      {width > 0 && (
        <>
          <path className="axis" d={`M${String(EDGE)} ${String(ROW)}H${String(width - EDGE)}`} />
          <path className="usual" d={`M${String(x(1))} 2V${String(2 * ROW)}`} />
          <path className="before" d={lens(before, 12)} />
          <path className="now-band" d={lens(now, 22)} />
          <path className="most-likely" d={`M${String(x(now.likely))} ${String(ROW - 22)}v44`} />
          <text x={EDGE} y={HEIGHT - 6}>
            ← {axis.quicker}
          </text>
          <text x={x(1)} y={HEIGHT - 6} textAnchor="middle">
            {axis.usual}
          </text>
          <text x={width - EDGE} y={HEIGHT - 6} textAnchor="end">
            {axis.slower} →
          </text>
        </>
      )}
    </svg>
  );
}
