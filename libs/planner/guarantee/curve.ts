import { lengthAt, truncatedQuantile } from '../length.js';
import type { Problem } from '../problem.js';
import type { Wait } from './plan-links.js';

/** Moments that a draw decides, counted from one point, over the band of the draw: f(z) = offset + median · e^(sigma z). */
export interface Curve {
  readonly offset: number;
  readonly median: number;
  readonly sigma: number;
  /** The band of the draw, in standard deviations, conditioned on what was observed. */
  readonly from: number;
  readonly to: number;
  /** Whole minutes that hold all of the curve. */
  readonly low: number;
  readonly high: number;
}

/** The moment a wait is for, from the quantile 1 − certainty to the quantile `certainty` of its draw. */
export function curveOf({ offset, length }: Wait, draws: Problem['draws'], certainty: number): Curve {
  const { above = -Infinity, below = Infinity } = draws[length.draw] ?? {};
  return {
    offset,
    median: length.median,
    sigma: length.sigma,
    from: truncatedQuantile(1 - certainty, above, below),
    to: truncatedQuantile(certainty, above, below),
    low: offset + lengthAt(length, certainty, 'at-most', draws),
    high: offset + lengthAt(length, certainty, 'at-least', draws),
  };
}

/**
 * The least and the greatest of b(z) − a(z) over the band of the draw they share. Each is the difference of two
 * exponentials, so besides the ends of the band only the one place at which the slopes are equal can decide.
 */
export function difference(a: Curve, b: Curve): { readonly least: number; readonly greatest: number } {
  const at = (z: number): number =>
    b.offset + b.median * Math.exp(b.sigma * z) - a.offset - a.median * Math.exp(a.sigma * z);
  const level = Math.log((a.median * a.sigma) / (b.median * b.sigma)) / (b.sigma - a.sigma);
  const inside = level > a.from && level < a.to ? [at(level)] : [];
  const all = [at(a.from), at(a.to), ...inside];
  return { least: Math.min(...all), greatest: Math.max(...all) };
}

/** The whole minute below, or at it but for the noise of exp and log. */
export function wholeBelow(minutes: number): number {
  return Math.floor(Number(minutes.toFixed(6)));
}
