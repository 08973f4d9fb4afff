/**
 * P(X ≤ k) for X successes in n independent trials of chance p.
 * The smaller tail is summed outwards from k, so that small chances keep their digits; relative error of it below
 * 1e-11 for n up to 10 000. The first term is C. Loader's saddle-point form ("Fast and accurate computation of
 * binomial probabilities", 2000), the others follow by the ratio of neighbours,
 *
 *     P(i − 1) / P(i) = i (1 − p) / ((n − i + 1) p)
 *
 * @param k any number; it is rounded down
 * @param n trials, a whole number, 0 or more
 * @param p chance of success in [0, 1]
 * @throws RangeError for an n or p out of range, or a k that is not a number
 */
export function binomialCdf(k: number, n: number, p: number): number {
  if (!(Number.isSafeInteger(n) && n >= 0)) throw new RangeError(`${String(n)} is not a count of trials`);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`${String(p)} is not a probability`);
  if (Number.isNaN(k)) throw new RangeError('k is not a number');
  const at = Math.floor(k);
  if (at < 0) return 0;
  if (at >= n || p === 0) return 1;
  if (p === 1) return 0;
  return at < n * p ? lowerTail(at, n, p) : 1 - lowerTail(n - at - 1, n, 1 - p);
}

/** P(X ≤ k) for 0 ≤ k < n, terms falling from k down to where they no longer count. */
function lowerTail(k: number, n: number, p: number): number {
  let term = binomialPdf(k, n, p);
  let sum = term;
  for (let i = k; i > 0 && term > sum * 1e-18; i -= 1) {
    term *= (i * (1 - p)) / ((n - i + 1) * p);
    sum += term;
  }
  return Math.min(1, sum);
}

/** P(X = k), 0 < p < 1. */
function binomialPdf(k: number, n: number, p: number): number {
  if (k === 0) return Math.exp(n * Math.log1p(-p));
  const failures = n - k;
  const exponent =
    stirlingError(n) -
    stirlingError(k) -
    stirlingError(failures) -
    deviance(k, n * p) -
    deviance(failures, n * (1 - p));
  return Math.exp(exponent) * Math.sqrt(n / (2 * Math.PI * k * failures));
}

/** ln n! less Stirling's formula, n ≥ 1: DLMF 5.11.1, or the definition where n is too small for five terms. */
function stirlingError(n: number): number {
  if (n >= 16) {
    const s = 1 / (n * n);
    return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - s / 1188) * s) * s) * s) / n;
  }
  let factorial = 1;
  for (let i = 2; i <= n; i += 1) factorial *= i;
  return Math.log(factorial) - (n + 0.5) * Math.log(n) + n - Math.log(2 * Math.PI) / 2;
}

/**
 * x ln(x/m) + m − x, the deviance of x where m is expected. Near m the logarithm would cancel, so with
 * v = (x − m)/(x + m) and ln(x/m) = 2 artanh v the first terms are merged into (x − m) v.
 */
function deviance(x: number, m: number): number {
  const v = (x - m) / (x + m);
  if (Math.abs(v) > 0.1) return x * Math.log(x / m) + m - x;
  let power = v;
  let sum = 0;
  for (let odd = 3; odd < 41; odd += 2) {
    power *= v * v;
    sum += power / odd;
  }
  return (x - m) * v + 2 * x * sum;
}
