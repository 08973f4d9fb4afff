/**
 * How far the pace of a workshop, and under it that of a recipe, lies from the shipped one before anything has
 * been logged: standard deviations of the logarithm. From memory; the second is this project's own choice.
 */
export const offsetPrior = { workshopSigma: 0.35, recipeSigma: 0.15 } as const;

/** The spread of a batch in a workshop of which nothing is known. @param batchSigma of the logarithm */
export function spreadUnlearned(batchSigma: number): number {
  const { workshopSigma, recipeSigma } = offsetPrior;
  return Math.sqrt(batchSigma * batchSigma + workshopSigma * workshopSigma + recipeSigma * recipeSigma);
}
