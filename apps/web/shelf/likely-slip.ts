/** What scales and fingers get wrong: a decimal point, or ounces for grams. */
const FACTORS = [10, 100, 1000, 1 / 10, 1 / 100, 1 / 1000, 28.3495, 1 / 28.3495] as const;
/** So near to what was expected it has to come. */
const NEAR = Math.log(1.3);

/**
 * The mass that was probably meant by one that is far off.
 * @param massG what was written down, grams
 * @param expectedG what was expected, grams
 * @returns grams; undefined where no usual slip explains it
 */
export function likelyMeant(massG: number, expectedG: number): number | undefined {
  const off = (mass: number): number => Math.abs(Math.log(mass / expectedG));
  const meant = FACTORS.map((factor) => massG / factor).toSorted((a, b) => off(a) - off(b))[0];
  return meant !== undefined && off(meant) <= NEAR ? meant : undefined;
}
