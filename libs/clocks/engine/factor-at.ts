/** A value read, and the factor at it. */
export type Point = readonly [x: number, factor: number];

/** On which side of its table a value lies if it lies outside. */
export type Side = 'below' | 'above';

/**
 * Reads a piecewise linear table; beyond its ends the factor is held at the end point's.
 * @param table points with rising x; at least one
 * @param x finite, in the unit of the table
 */
export function factorAt(table: readonly Point[], x: number): number {
  let left: Point | undefined;
  for (const right of table) {
    if (x === right[0]) return right[1];
    if (x < right[0]) return left === undefined ? right[1] : between(left, right, x);
    left = right;
  }
  if (left === undefined) throw new RangeError('a table needs at least one point');
  return left[1];
}

/** On which side a value lies outside a table; undefined within it and at its ends. Parameters as `factorAt`. */
export function outsideOf(table: readonly Point[], x: number): Side | undefined {
  const [first, last] = [table[0], table[table.length - 1]];
  if (first !== undefined && x < first[0]) return 'below';
  if (last !== undefined && x > last[0]) return 'above';
  return undefined;
}

function between(left: Point, right: Point, x: number): number {
  return left[1] + ((x - left[0]) / (right[0] - left[0])) * (right[1] - left[1]);
}
