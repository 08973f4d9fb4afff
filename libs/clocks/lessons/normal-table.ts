import { normalCdf } from '#units';

const REACH = 8;
const PER_UNIT = 200;
const values = Float64Array.from({ length: 2 * REACH * PER_UNIT + 2 }, (_, i) =>
  normalCdf(i / PER_UNIT - REACH),
);

/**
 * Φ(z) from a table, on a straight line between its points: within 1e-6, and many times as fast, for sums over thousands of
 * cells. 0 and 1 beyond eight standard deviations.
 */
export function tabulatedCdf(z: number): number {
  if (!(z > -REACH)) return 0;
  if (z >= REACH) return 1;
  const at = (z + REACH) * PER_UNIT;
  const left = Math.floor(at);
  const low = values[left] ?? 0;
  return low + (at - left) * ((values[left + 1] ?? 1) - low);
}
