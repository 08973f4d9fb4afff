/** A value on straight lines through points of rising x; beyond either end on the line of the last two. */
export function onLine(points: readonly (readonly [x: number, y: number])[], x: number): number {
  const after = points.findIndex(([at]) => at >= x);
  const last = after < 0 ? points.length - 1 : Math.max(1, after);
  const [[a, low], [b, high]] = [points[last - 1] ?? [0, NaN], points[last] ?? [1, NaN]];
  return low + ((high - low) * (x - a)) / (b - a);
}
