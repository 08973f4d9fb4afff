import type { Schemas } from '../../api/client.js';

type Heat = Pick<Schemas['PartHeat'], 'curve' | 'hottestC' | 'hottestMin' | 'gelC' | 'aroundC' | 'isMade'>;

/** Room above and below what is drawn, K. */
const MARGIN_K = 3;

/** Ends of the picture of a part's heat: minutes from the pour, and °C with everything in sight that is drawn. */
export function heatSpan({ curve, hottestC, gelC, aroundC, isMade }: Heat): {
  readonly min: readonly [number, number];
  readonly celsius: readonly [number, number];
} {
  const drawn = [
    ...curve.flatMap(({ middleC, edgeC }) => [middleC, edgeC]),
    ...(isMade ? [] : [gelC]),
    ...[hottestC.low, hottestC.high, aroundC],
  ];
  return {
    min: [0, Math.max(1, ...curve.map(({ min }) => min))],
    celsius: [Math.min(...drawn) - MARGIN_K, Math.max(...drawn) + MARGIN_K],
  };
}

/** Distances of marks on the axis of time, min. */
const STEPS = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440, 2880];

/** Round times from the pour on. @param most how many steps between them the axis has room for, 1 or more */
export function timeMarks(lastMin: number, most: number): number[] {
  const step = STEPS.find((each) => lastMin / each <= most) ?? lastMin / most;
  return Array.from({ length: Math.floor(lastMin / step) + 1 }, (_, i) => i * step);
}
