/**
 * Volume to pour so that a piece has a given volume once it has shrunk: V = finished / (1 − shrinkage / 100).
 * How much soap shrinks has no source; it is measured on finished pieces, by the water they push aside.
 * @param finishedMl 0 or more, mL
 * @param shrinkagePercent of the fresh volume that is lost, 0 to 50
 * @returns mL
 * @throws RangeError outside those ranges
 */
export function freshVolume(finishedMl: number, shrinkagePercent: number): number {
  if (!(finishedMl >= 0 && finishedMl < Infinity)) {
    throw new RangeError(`${String(finishedMl)} mL; accepted: 0 mL or more`);
  }
  if (!(shrinkagePercent >= 0 && shrinkagePercent <= 50)) {
    throw new RangeError(`Shrinkage of ${String(shrinkagePercent)} %; accepted: 0 to 50 %`);
  }
  return finishedMl / (1 - shrinkagePercent / 100);
}
