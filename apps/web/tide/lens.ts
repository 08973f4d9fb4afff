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
/** Of a window that stays open for long: a thread that shows that it is open, and not that it is good. */
const THREAD = 0.07;
const DAY = 24 * 60 * 60_000;

/**
 * The outline of a window: thin where it opens and closes, nearly full where it is open with 90 % certainty, full at
 * its best. Where the end is more than two days after the best, or there is none, the lens is over after a day, and a
 * thread leads on.
 * @param until where a window without an end is cut off
 * @returns points in order, each instant once
 */
export function lensShape(window: LensWindow, until: number): LensPoint[] {
  const { opens, best, lastCall, surelyOpen, surelyUntil } = window;
  const end = lastCall ?? Math.max(until, best);
  const isLong = lastCall === null || end - best > 2 * DAY;
  const after = isLong
    ? [
        { at: Math.min(best + DAY, end), fullness: THREAD },
        { at: end, fullness: THREAD },
      ]
    : [
        ...(surelyUntil !== null && surelyUntil > best && surelyUntil < end
          ? [{ at: surelyUntil, fullness: SURE }]
          : []),
        { at: end, fullness: THIN },
      ];
  const points: LensPoint[] = [
    { at: opens, fullness: THIN },
    ...(surelyOpen !== null && surelyOpen > opens && surelyOpen < best
      ? [{ at: surelyOpen, fullness: SURE }]
      : []),
    { at: best, fullness: 1 },
    ...after,
  ];
  const fullest = new Map<number, number>();
  for (const { at, fullness } of points) fullest.set(at, Math.max(fullness, fullest.get(at) ?? 0));
  return [...fullest].map(([at, fullness]) => ({ at, fullness })).sort((a, b) => a.at - b.at);
}
