/** A log-offset, as far as it is known: e^mean is how many times longer than forecast. */
export interface Offset {
  readonly mean: number;
  /** Standard deviation of what is still not known of it, 0 or more. */
  readonly sd: number;
}

/** How far workshops differ, and the recipes of one workshop among themselves: standard deviations of log-offsets. */
export interface OffsetPrior {
  readonly workshopSigma: number;
  readonly recipeSigma: number;
}

/** What is known of the offsets of one pace after all that was observed. */
export interface Posterior {
  /** δ_w, what all batches of the workshop share. */
  readonly workshop: Offset;
  /**
   * δ_w + δ_r, to be added to the logarithm of a forecast for this recipe; for one that was never made, what the
   * others tell of it.
   */
  recipe(key: string): Offset;
}
