/**
 * A project in the plain form of the literature (RCPSP/max): activities with durations, renewable resources, and
 * start-to-start time lags of either sign. Arrays have one entry for each activity; the first is the source, which
 * starts at 0, and the last the sink, which starts when all others have ended.
 */
export interface Project {
  /** Whole, 0 or more. */
  readonly dur: readonly number[];
  /** Units of each resource, whole. */
  readonly cap: readonly number[];
  /** `req[i][r]`: units of resource r that activity i uses from its start for its duration, whole, 0 or more. */
  readonly req: readonly (readonly number[])[];
  /** `[i, j, w]`: activity j starts no earlier than `w` after the start of i; `w` is whole and may be negative. */
  readonly lags: readonly (readonly [number, number, number])[];
}
