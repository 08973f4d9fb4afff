/**
 * How far the pace of a workshop, and under it that of a recipe, lies from the shipped one before anything has
 * been logged: standard deviations of the logarithm. From memory; the second is this project's own choice.
 */
export const offsetPrior = { workshopSigma: 0.35, recipeSigma: 0.15 } as const;

/** Standard deviations of the logarithm of a time, by what varies together. */
export interface Spreads {
  /** From batch to batch of one recipe in one workshop. */
  readonly batchSigma: number;
  /** What batches of the recipe have in common, and other recipes not. */
  readonly recipeSigma: number;
  /** What all batches of the workshop have in common. */
  readonly sharedSigma: number;
  /** All three together: what a band is made of. */
  readonly sigma: number;
}

/**
 * Of a workshop of which nothing is known. What a rule has wrong about a recipe it has wrong about every batch of it.
 * @param ruleSigma of the rules that apply
 */
export function spreadsUnlearned(batchSigma: number, ruleSigma: number): Spreads {
  return spreadsOf(batchSigma, Math.hypot(offsetPrior.recipeSigma, ruleSigma), offsetPrior.workshopSigma);
}

/** The three with what they come to. */
export function spreadsOf(batchSigma: number, recipeSigma: number, sharedSigma: number): Spreads {
  const sigma = Math.sqrt(batchSigma * batchSigma + recipeSigma * recipeSigma + sharedSigma * sharedSigma);
  return { batchSigma, recipeSigma, sharedSigma, sigma };
}
