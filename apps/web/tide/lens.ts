/** When a stage may start, in milliseconds since 1970. */
export interface LensWindow {
  readonly opens: number;
  readonly best: number;
  /** null: nothing closes it. */
  readonly lastCall: number | null;
  readonly surelyOpen: number | null;
  readonly surelyUntil: number | null;
}

export interface LensPoint {
  readonly at: number;
  /** 0 to 1: how good a moment it is. */
  readonly fullness: number;
}

const THIN = 0.14;
const SURE = 0.82;
const OPEN_END = 0.5;

/**
 * The outline of a window: thin where it opens and closes, nearly full where it is open with 90 % certainty, full at
 * its best. A window that nothing closes stays half full.
 * @param until where a window without an end is cut off
 * @returns points in order, each instant once
 */
export function lensShape(window: LensWindow, until: number): LensPoint[] {
  const { opens, best, lastCall, surelyOpen, surelyUntil } = window;
  const end = lastCall ?? Math.max(until, best);
  const points: LensPoint[] = [
    { at: opens, fullness: THIN },
    ...(surelyOpen !== null && surelyOpen > opens && surelyOpen < best
      ? [{ at: surelyOpen, fullness: SURE }]
      : []),
    { at: best, fullness: 1 },
    ...(surelyUntil !== null && surelyUntil > best && surelyUntil < end
      ? [{ at: surelyUntil, fullness: SURE }]
      : []),
    { at: end, fullness: lastCall === null ? OPEN_END : THIN },
  ];
  const fullest = new Map<number, number>();
  for (const { at, fullness } of points) fullest.set(at, Math.max(fullness, fullest.get(at) ?? 0));
  return [...fullest].map(([at, fullness]) => ({ at, fullness })).sort((a, b) => a.at - b.at);
}
