import type { Observation } from './observation.js';
import { tabulated, type Censored, type Table } from './table.js';

/** All that the batches of one recipe say of its offset s = δ_w + δ_r. Plain data, for keeping and sending. */
export interface RecipeEvidence {
  /** How many batches, exact or censored. */
  readonly batches: number;
  /** Σ 1/σ² over the exact observations. */
  readonly precision: number;
  /** Σ y/σ² over the exact observations. */
  readonly pull: number;
  /** Observations known only to lie between two bounds, while they are few; else none. */
  readonly censored: readonly Censored[];
  /** The same once they are many. */
  readonly table?: Table | undefined;
}

/** What is known of one pace, by recipe: all that `learnFrom` reads of the observations behind it. */
export type Evidence = ReadonlyMap<string, RecipeEvidence>;

/** So many censored observations are kept as they are, so that a short log is read to the last digit. A choice. */
const SINGLY = 8;

/**
 * Sorts observations by recipe and adds up the exact ones, of which nothing but two sums matters, and the censored ones
 * once they are many, which then are read as closely as `Table` says.
 * @param before evidence that they are added to, left as it is; absent: none
 * @throws RangeError when an observation is no observation: σ not above 0, an exact time that is not finite,
 *   bounds without room between them
 */
export function evidenceOf(observations: readonly Observation[], before: Evidence = new Map()): Evidence {
  const sums = new Map<string, RecipeEvidence>(before);
  for (const observation of observations) {
    const { recipe } = observation;
    sums.set(recipe, added(sums.get(recipe) ?? nothing, observation));
  }
  return sums;
}

const nothing: RecipeEvidence = { batches: 0, precision: 0, pull: 0, censored: [] };

function added(sum: RecipeEvidence, observation: Observation): RecipeEvidence {
  const { exact, above = -Infinity, below = Infinity, sigma } = observation;
  if (!(sigma > 0 && sigma < Infinity)) throw new RangeError(`σ of ${String(sigma)}; accepted: above 0`);
  const batches = sum.batches + 1;
  if (exact === undefined) {
    if (!(above < below)) throw new RangeError(`above ${String(above)} and below ${String(below)} at once`);
    const one = {
      ...(above > -Infinity && { above }),
      ...(below < Infinity && { below }),
      sigma,
    };
    const censored = [...sum.censored, one];
    const few = sum.table === undefined && censored.length <= SINGLY;
    if (few) return { ...sum, batches, censored };
    return { ...sum, batches, censored: [], table: tabulated(censored, sum.table) };
  }
  if (!Number.isFinite(exact)) throw new RangeError(`an exact time with the logarithm ${String(exact)}`);
  const precision = 1 / (sigma * sigma);
  return { ...sum, batches, precision: sum.precision + precision, pull: sum.pull + exact * precision };
}

/** Whether all of it is known exactly, so that two sums are all that there is. */
export function isExact({ censored, table }: RecipeEvidence): boolean {
  return censored.length === 0 && table === undefined;
}
