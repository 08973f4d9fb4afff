import { normalCdf, normalQuantile } from '#units';
import type { LogNormal, Truncation } from './log-normal.js';

/** A quantity with its uncertainty: 10th, 50th and 90th percentile. */
export interface Band {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/**
 * The time by which a state has come about with probability p.
 *
 *     t = median · exp(σ z),   Φ(z) = Φ(a) + p (Φ(b) − Φ(a))
 *
 * where (a, b) is what has been seen: a log-normal truncated to what is still possible.
 *
 * @param p probability, 0 to 1, both included; without a bound on that side 0 gives 0 and 1 gives ∞
 * @param seen what has been observed; absent: nothing
 * @returns minutes, not rounded
 * @throws RangeError when p is no probability or nothing lies between the bounds
 * @see N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 1 (1994), sections 10.1 and
 *   14.2 (from memory)
 */
export function quantile(f: LogNormal, p: number, seen: Truncation = {}): number {
  return f.medianMin * Math.exp(f.sigma * truncatedNormalQuantile(p, seen));
}

/** The 10th, 50th and 90th percentile in minutes; parameters and faults as `quantile`. */
export function band(f: LogNormal, seen: Truncation = {}): Band {
  return { low: quantile(f, 0.1, seen), likely: quantile(f, 0.5, seen), high: quantile(f, 0.9, seen) };
}

/**
 * As many times as are asked for, each standing for an equal share of what may come: the quantiles at (k − ½) / count. Drawn as
 * dots they can be counted.
 * @param count whole, 1 or more
 * @returns minutes, not rounded, ascending; other parameters and faults as `quantile`
 * @see M. Kay, T. Kola, J. R. Hullman, S. A. Munson, When (ish) is My Bus?, CHI 2016 (quantile dot plots)
 */
export function quantiles(f: LogNormal, count: number, seen: Truncation = {}): number[] {
  return Array.from({ length: count }, (_, k) => quantile(f, (k + 0.5) / count, seen));
}

/** Beyond this many standard deviations the tail is too thin for Φ to be told from 0. */
const DEEP = 30;

function truncatedNormalQuantile(p: number, { above = -Infinity, below = Infinity }: Truncation): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`${String(p)} is not a probability`);
  if (!(above < below)) {
    throw new RangeError(`nothing lies between ${String(above)} and ${String(below)} standard deviations`);
  }
  // In the upper tail Φ is 1 but for its last digits; mirrored, it keeps them all.
  if (above > 0) return -truncatedNormalQuantile(1 - p, { above: -below, below: -above });
  if (below < -DEEP) return deepTail(p, above, below);
  const from = normalCdf(above);
  const z = normalQuantile(Math.min(1, from + p * (normalCdf(below) - from)));
  return Math.min(below, Math.max(above, z));
}

/** Far out the normal density falls like that of z², which is exponential: exp(−z²/2) is then the tail itself. */
function deepTail(p: number, above: number, below: number): number {
  const cut = Math.exp((below * below - above * above) / 2);
  return -Math.sqrt(below * below - 2 * Math.log(cut + p * (1 - cut)));
}
