/** A constraint of the search besides lags and clauses. It raises bounds on the trail, each with its reason. */
export interface Propagator {
  /** To be told of every side that rises or falls. */
  touch(side: number): void;
  /** @returns false, with the conflict of the trail set, when it cannot be kept */
  propagate(): boolean;
}
