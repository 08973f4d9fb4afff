/** A log-offset, as far as it is known: e^mean is how many times longer than forecast. */
export interface Offset {
  readonly mean: number;
  /** Standard deviation of what is still not known of it, 0 or more. */
  readonly sd: number;
}

/** The offset of a recipe, δ_w + δ_r. */
export interface RecipeOffset extends Offset {
  /** As much of `sd` as it has in common with the other recipes of the workshop; at most `sd`. */
  readonly sharedSd: number;
}

/** How far workshops differ, and the recipes of one workshop among themselves: standard deviations of log-offsets. */
export interface OffsetPrior {
  readonly workshopSigma: number;
  readonly recipeSigma: number;
}

/** What is known of one pace after all that was observed. */
export interface Posterior {
  /** δ_w, what all batches of the workshop share. */
  readonly workshop: Offset;
  /** How many times the σ of a batch is what the rules say; 1 while nothing was learned. */
  readonly spread: number;
  /** How many batches have taught it: 0 as long as nobody has logged a look before the soap was ready. */
  readonly batches: number;
  /**
   * To be added to the logarithm of a forecast for this recipe; for one that was never made, what the others tell of it.
   * @param doubt σ of what the rules may have wrong about a recipe that was never made
   */
  readonly recipe: (key: string, doubt?: number) => RecipeOffset;
}
