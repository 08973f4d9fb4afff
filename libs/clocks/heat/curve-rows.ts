import type { WarmingPoint } from './warming.js';

/** Distances of the rows of a table, min. */
const STEPS = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720, 1440, 2880];
const MOST_ROWS = 8;

/**
 * A curve as the rows of a small table: at round times from the pour on and where it is hottest.
 * @param curve in the order of time, from the pour
 * @param hottestMin when the middle is hottest, min from the pour; 0 where it only cools
 * @returns some eight points at most and the hottest; none of an empty curve
 */
export function curveRows(curve: readonly WarmingPoint[], hottestMin: number): WarmingPoint[] {
  const last = curve.at(-1);
  if (last === undefined) return [];
  const step = STEPS.find((each) => last.min / each <= MOST_ROWS - 1) ?? last.min / (MOST_ROWS - 1);
  const times = Array.from({ length: Math.floor(last.min / step) + 1 }, (_, i) => i * step);
  // A round time right beside the hottest moment would say the same twice.
  const others = hottestMin > 0 ? times.filter((min) => Math.abs(min - hottestMin) >= step / 3) : times;
  const rows = hottestMin > 0 ? [...others, Math.min(hottestMin, last.min)] : others;
  return rows.sort((a, b) => a - b).map((min) => pointAt(curve, min));
}

/** Between two points on a straight line. */
function pointAt(curve: readonly WarmingPoint[], min: number): WarmingPoint {
  const next = curve.findIndex((point) => point.min >= min);
  const [after, before] = [curve[next], curve[next - 1]];
  if (after === undefined) throw new RangeError(`${String(min)} min is after the end of the curve`);
  if (before === undefined) return after;
  const share = (min - before.min) / (after.min - before.min);
  const between = (a: number, b: number): number => a + share * (b - a);
  return {
    min,
    middleC: between(before.middleC, after.middleC),
    edgeC: between(before.edgeC, after.edgeC),
  };
}
