/** A log-normal time: its median in minutes and the standard deviation of its logarithm. */
export interface LogNormal {
  readonly medianMin: number;
  readonly sigma: number;
}

/** What has been seen of a time: it lies in (above, below), in standard deviations of its logarithm. */
export interface Truncation {
  readonly above?: number;
  readonly below?: number;
}
