/**
 * A simple temporal network with uncertainty: points in time, requirements that whoever executes it must meet, and
 * contingent links whose length only nature decides. Points are numbers from 0; all times are whole.
 */
export interface Stnu {
  readonly points: number;
  readonly requirements: readonly Requirement[];
  readonly contingents: readonly Contingent[];
}

/** min ≤ t(to) − t(from) ≤ max; a side left out is no bound. */
export interface Requirement {
  readonly from: number;
  readonly to: number;
  readonly min?: number;
  readonly max?: number;
}

/** `to` comes about min to max after `from`, 0 ≤ min ≤ max. No other contingent link has the same `to`. */
export interface Contingent {
  readonly from: number;
  readonly to: number;
  readonly min: number;
  readonly max: number;
}

/** One side of a requirement or contingent link, by its index. */
export interface Side {
  readonly kind: 'requirement' | 'contingent';
  readonly index: number;
  readonly bound: 'min' | 'max';
}
