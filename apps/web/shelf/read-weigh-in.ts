import type { LogEntry } from '#contract';

type WeighIn = Omit<Extract<LogEntry, { kind: 'weigh-in' }>, 'at'>;

/** Bounds as in the log's contract. */
const MOST_PIECES = 5000;
const [LEAST_G, MOST_G] = [0.1, 1_000_000];

/**
 * A weigh-in from the numbers in its two fields.
 * @param pieces undefined where the field holds no number
 * @param mass the same, in the unit the person uses
 * @param grams from that unit to grams
 * @returns the entry but for its time, or which fields cannot be
 */
export function readWeighIn(
  pieces: number | undefined,
  mass: number | undefined,
  grams: (mass: number) => number,
): { readonly entry?: WeighIn; readonly wrong: readonly ('pieces' | 'mass')[] } {
  const massG = mass === undefined ? NaN : grams(mass);
  const isCount = pieces !== undefined && Number.isInteger(pieces) && pieces >= 1 && pieces <= MOST_PIECES;
  const isMass = massG >= LEAST_G && massG <= MOST_G;
  if (isCount && isMass) return { entry: { kind: 'weigh-in', pieces, massG }, wrong: [] };
  return { wrong: [...(isCount ? [] : (['pieces'] as const)), ...(isMass ? [] : (['mass'] as const))] };
}
