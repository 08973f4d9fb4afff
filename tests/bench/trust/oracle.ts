import { normalCdf, normalQuantile } from '#units';
import { tabulatedCdf } from '../../../libs/clocks/lessons/normal-table.js';

/** How well a forecast of the next batch would do. */
export interface Well {
  /** Probability that the next batch is ready within the band of 80 %. */
  readonly coverage: number;
  /** Likely time over the true median. */
  readonly ratio: number;
  /** High over low end of the band. */
  readonly width: number;
}

/** What was seen of one batch: ln of minutes over the untaught median; it became ready in between. */
export interface TrueInterval {
  readonly above: number;
  readonly below: number;
}

/** How it is at a maker's. */
export interface TrueLevel {
  /** ln of the true median over the untaught one. */
  readonly level: number;
  readonly batchSigma: number;
}

/**
 * Knows how far workshops and recipes differ, and of each batch when it was really looked at, whether that was written or not. What is left
 * to learn follows exactly, by sums over a grid, and so does the band of the next batch. No forecast from the log alone can be expected to
 * do better, so a bar that an oracle misses is not to be had from such looks.
 */
export interface Oracle {
  readonly see: (interval: TrueInterval) => void;
  readonly judge: (truth: TrueLevel) => Well;
}

const STEP = 0.02;
const REACH = 2.6;
/** No factor of a likelihood is taken for less than this. */
const LEAST = 1e-12;
/** Less likely than this beside the likeliest, a point of the grid is left out. */
const NOTHING = 1e-6;

/**
 * @param levelSigma standard deviation of the logarithm of a pace before any log
 * @param batchSigmas how much batches may vary, each as likely as the others: one where the oracle is told, all that a bench draws from where
 *   it must learn that too
 */
export function oracle(levelSigma: number, batchSigmas: readonly number[]): Oracle {
  const count = Math.round((2 * REACH) / STEP) + 1;
  const levels = Float64Array.from({ length: count }, (_, i) => i * STEP - REACH);
  const supposed = batchSigmas.map((sigma) => ({
    sigma,
    logs: levels.map((level) => -((level / levelSigma) ** 2) / 2),
  }));
  return {
    see({ above, below }) {
      for (const { sigma, logs } of supposed) {
        for (let i = 0; i < count; i += 1) {
          const [from, to] = [(above - levels[i]!) / sigma, (below - levels[i]!) / sigma];
          logs[i]! += Math.log(Math.max(tabulatedCdf(to) - tabulatedCdf(from), LEAST));
        }
      }
    },
    judge({ level, batchSigma }) {
      const top = Math.max(...supposed.flatMap(({ logs }) => [...logs]));
      const points = supposed.flatMap(({ sigma, logs }) =>
        [...logs].flatMap((log, i) => {
          const weight = Math.exp(log - top);
          return weight > NOTHING ? [{ weight, sigma, level: levels[i]! }] : [];
        }),
      );
      const total = points.reduce((sum, { weight }) => sum + weight, 0);
      const quantile = (p: number): number => {
        let [low, high] = [-2 * REACH, 2 * REACH];
        for (let k = 0; k < 20; k += 1) {
          const middle = (low + high) / 2;
          const below = points.reduce(
            (sum, each) => sum + each.weight * tabulatedCdf((middle - each.level) / each.sigma),
            0,
          );
          if (below < p * total) low = middle;
          else high = middle;
        }
        return (low + high) / 2;
      };
      const [low, likely, high] = [quantile(0.1), quantile(0.5), quantile(0.9)];
      return within(low - level, likely - level, high - level, batchSigma);
    },
  };
}

/** Of a band whose ends lie 1.28 σ on either side of a likely time. @param shift ln(likely / true median) */
export function wellOf(shift: number, sigma: number, batchSigma: number): Well {
  const half = normalQuantile(0.9) * sigma;
  return within(shift - half, shift, shift + half, batchSigma);
}

function within(low: number, likely: number, high: number, batchSigma: number): Well {
  return {
    coverage: normalCdf(high / batchSigma) - normalCdf(low / batchSigma),
    ratio: Math.exp(likely),
    width: Math.exp(high - low),
  };
}
