import type { SeenBatch } from './evidence.js';
import type { Grid } from './cells.js';
import type { Stretches } from './looking-habits.js';
import { tabulatedCdf } from './normal-table.js';

/** A slip lies within some such multiple of the batch's σ. A choice. */
export const SLIP_SPREAD = 3.2;
/** Nothing that was written is less likely than this: no entry outweighs all others. */
const LEAST = 1e-12;
/** Factors multiplied before a logarithm is taken: at `LEAST` each, still far above the least number. */
const AT_ONCE = 16;

/** A batch with where it may have become ready. */
export interface PlacedBatch extends Pick<SeenBatch, 'sigma'> {
  readonly stretches: Stretches;
}

/** What is summed over beside the offset. */
export interface Dimensions {
  readonly spreads: readonly number[];
  /** How many habits the weights of stretches are told for. */
  readonly habits: number;
  readonly slips: number;
}

/**
 * Log-likelihood of the batches of one recipe, by spread, then habit, then offset of the grid; ε being the share of slips:
 *
 *     L = Π_batches Σ_i weight_i ((1 − ε) P_i(κσ) + ε P_i(3.2 σ)),   P_i(σ) = Φ((end_i − s)/σ) − Φ((end_{i+1} − s)/σ)
 */
export function recipeLikelihood(
  batches: readonly PlacedBatch[],
  { spreads, habits, slips }: Dimensions,
  { points }: Grid,
): Float64Array[][] {
  // A batch of one stretch tells the same of its offset whatever the habit.
  const plain = batches.filter(({ stretches }) => stretches.ends.length === 2).map(compact);
  const others = batches.filter(({ stretches }) => stretches.ends.length > 2).map(compact);
  const ofHabit = Array.from({ length: habits }, (_, h) =>
    plain.reduce((sum, { weights }) => sum + Math.log(Math.max(weights[h]!, LEAST)), 0),
  );
  const chances = new Float64Array(Math.max(2, ...others.map(({ ends }) => ends.length)));
  const products = new Float64Array(habits);
  return spreads.map((spread) => {
    const logs = ofHabit.map((log) => new Float64Array(points.length).fill(log));
    for (let i = 0; i < points.length; i += 1) {
      const s = points[i]!;
      let product = 1;
      let log = 0;
      for (let k = 0; k < plain.length; k += 1) {
        chancesOf(plain[k]!, s, spread, slips, chances);
        product *= Math.max(chances[0]!, LEAST);
        if (k % AT_ONCE !== AT_ONCE - 1) continue;
        log += Math.log(product);
        product = 1;
      }
      log += Math.log(product);
      products.fill(1);
      for (let h = 0; h < habits; h += 1) logs[h]![i]! += log;
      for (let k = 0; k < others.length; k += 1) {
        const batch = others[k]!;
        chancesOf(batch, s, spread, slips, chances);
        const stretches = batch.ends.length - 1;
        const isLast = k === others.length - 1 || k % AT_ONCE === AT_ONCE - 1;
        for (let h = 0; h < habits; h += 1) {
          let chance = 0;
          for (let e = 0; e < stretches; e += 1) chance += batch.weights[h * stretches + e]! * chances[e]!;
          products[h]! *= Math.max(chance, LEAST);
          if (!isLast) continue;
          logs[h]![i]! += Math.log(products[h]!);
          products[h] = 1;
        }
      }
    }
    return logs;
  });
}

/** A batch in one stretch of memory: weights by habit, then by stretch. */
interface CompactBatch {
  readonly sigma: number;
  readonly ends: Float64Array;
  readonly weights: Float64Array;
}

function compact({ sigma, stretches: { ends, weights } }: PlacedBatch): CompactBatch {
  return { sigma, ends: Float64Array.from(ends), weights: Float64Array.from(weights.flat()) };
}

/** Of each stretch of a batch, latest first. */
function chancesOf(
  { sigma, ends }: CompactBatch,
  s: number,
  spread: number,
  slips: number,
  chances: Float64Array,
): void {
  const [narrow, wide] = [1 / (spread * sigma), 1 / (SLIP_SPREAD * sigma)];
  let before = 0;
  for (let e = 0; e < ends.length; e += 1) {
    const z = ends[e]! - s;
    const here = (1 - slips) * tabulatedCdf(z * narrow) + slips * tabulatedCdf(z * wide);
    if (e > 0) chances[e - 1] = before - here;
    before = here;
  }
}
