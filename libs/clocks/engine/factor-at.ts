/** A value read, and the factor at it. */
export type Point = readonly [x: number, factor: number];

/** The factor of a table at a value, and on which side of the table the value lies if it lies outside. */
export interface FactorAt {
  readonly factor: number;
  readonly outside?: 'below' | 'above';
}

/**
 * Reads a piecewise linear table; beyond its ends the factor is held at the end point's.
 * @param table points with rising x; at least one
 * @param x finite, in the unit of the table
 */
export function factorAt(table: readonly Point[], x: number): FactorAt {
  const next = table.findIndex(([at]) => x <= at);
  const right = table.at(next);
  if (right === undefined) throw new RangeError('a table needs at least one point');
  if (next === -1) return { factor: right[1], outside: 'above' };
  if (x === right[0]) return { factor: right[1] };
  const left = next === 0 ? undefined : table[next - 1];
  if (left === undefined) return { factor: right[1], outside: 'below' };
  const share = (x - left[0]) / (right[0] - left[0]);
  return { factor: left[1] + share * (right[1] - left[1]) };
}
