import type { Band } from '../engine/quantile.js';
import type { DryingCurve } from './drying-curve.js';
import type { PlausibleCurve } from './plausible-curves.js';

/** The 10th, 50th and 90th percentile of some figure over curves and their weights. */
export function weightedBand(
  curves: readonly PlausibleCurve[],
  figure: (curve: DryingCurve) => number,
): Band {
  const weights = new Map<number, number>();
  for (const { curve, weight } of curves) {
    const value = figure(curve);
    weights.set(value, (weights.get(value) ?? 0) + weight);
  }
  const sorted = [...weights].map(([value, weight]) => ({ value, weight })).sort((a, b) => a.value - b.value);
  return {
    low: weightedQuantile(sorted, 0.1),
    likely: weightedQuantile(sorted, 0.5),
    high: weightedQuantile(sorted, 0.9),
  };
}

/** Each value, told once however many curves share it, stands at the middle of its weight; between two, the straight line. */
function weightedQuantile(sorted: readonly { value: number; weight: number }[], p: number): number {
  let below = 0;
  let last: { value: number; middle: number } | undefined;
  for (const { value, weight } of sorted) {
    const middle = below + weight / 2;
    if (middle >= p) {
      if (last === undefined) return value;
      const part = (p - last.middle) / (middle - last.middle);
      return last.value + (value - last.value) * part;
    }
    last = { value, middle };
    below += weight;
  }
  if (last === undefined) throw new RangeError('no curves have no percentiles');
  return last.value;
}
