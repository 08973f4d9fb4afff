/**
 * A project whose durations show only when an activity ends; otherwise in the plain form of the literature
 * (RCPSP/max). Arrays have one entry for each activity, first the source, last the sink, both of no duration.
 */
export interface UncertainProject {
  /** Bounds of the durations, whole, both included. */
  readonly shortest: readonly number[];
  readonly longest: readonly number[];
  /** Units of each resource. */
  readonly cap: readonly number[];
  /** `req[i][r]`: units of resource r that activity i uses while it runs. */
  readonly req: readonly (readonly number[])[];
  /** `[i, j, w]`: activity j starts no earlier than `w` after the start of i; `w` may be negative. */
  readonly lags: readonly (readonly [number, number, number])[];
}

/** `[i, j]`: activity j starts no earlier than i ends. */
export type OrderLink = readonly [number, number];
