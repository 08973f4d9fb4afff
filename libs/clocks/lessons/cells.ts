/** Equally spaced log-offsets. */
export interface Grid {
  readonly points: Float64Array;
  readonly step: number;
}

/** A fiftieth of a time, and half the least deviation that a log can leave of an offset. A choice. */
const STEP = 0.04;
/** Beyond 0 and beyond all that was seen: what is cut off has a prior below a thousandth. */
const MARGIN = 1.2;
/** No workshop is further off than twelve times, whatever is written. A choice. */
const FURTHEST = 2.5;

/** The log-offsets over which the posterior is summed. @param pulls where observations draw it */
export function gridFor(pulls: readonly number[]): Grid {
  const low = Math.max(-FURTHEST, Math.min(0, ...pulls)) - MARGIN;
  const high = Math.min(FURTHEST, Math.max(0, ...pulls)) + MARGIN;
  const first = Math.floor(low / STEP);
  const count = Math.ceil(high / STEP) - first + 1;
  return { points: Float64Array.from({ length: count }, (_, i) => (first + i) * STEP), step: STEP };
}
