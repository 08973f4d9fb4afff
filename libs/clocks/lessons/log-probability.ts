import { normalCdf } from '#units';

/**
 * ln(Φ(b) − Φ(a)), the logarithm of the probability that a standard normal lies between a and b; finite wherever
 * b > a, though the probability itself may be far too small for a number.
 * Absolute error below 1e-9 up to 100 standard deviations out.
 * @param a −∞ or more
 * @param b above a, ∞ included
 */
export function logProbabilityBetween(a: number, b: number): number {
  // In the upper tail both Φ are 1 less something that has no digits left.
  if (a + b > 0) return logProbabilityBetween(-b, -a);
  const width = b - a;
  if (width < NARROW) {
    const middle = a + width / 2;
    const bent = Math.log1p((width * width * (middle * middle - 1)) / 24);
    return -(middle * middle) / 2 + Math.log(width) - LOG_ROOT_TWO_PI + bent;
  }
  const upper = logCdf(b);
  return a === -Infinity ? upper : upper + Math.log(-Math.expm1(logCdf(a) - upper));
}

/** Below this width a difference of two Φ loses digits; two terms of the density's series at the middle do not. */
const NARROW = 1e-4;

const LOG_ROOT_TWO_PI = Math.log(2 * Math.PI) / 2;

/** Φ leaves the normal range of numbers near −37. */
const DEEP = -35;

/** Beyond `DEEP` by the asymptotic series of Abramowitz and Stegun 26.2.12. */
function logCdf(z: number): number {
  if (z > DEEP) return Math.log(normalCdf(z));
  const r = 1 / (z * z);
  const series = -r * (1 - r * (3 - r * (15 - r * 105)));
  return -(z * z) / 2 - Math.log(-z) - LOG_ROOT_TWO_PI + Math.log1p(series);
}
