import { normalCdf, normalQuantile } from './normal.js';

/**
 * Student's t distribution: what a sum is worth when its spread was itself only estimated.
 *
 * Up to `HILL_FROM` degrees of freedom the tail is a regularised incomplete beta,
 *
 *     P(T > t) = I_x(ν/2, 1/2) / 2     x = ν / (ν + t²)     (DLMF 8.17, Abramowitz and Stegun 26.7.1)
 *
 * by the continued fraction DLMF 8.17.22, evaluated forwards by W. J. Lentz's method (Appl. Opt. 15 (1976)
 * 668-671). Beyond, where the fraction gets long, t is turned into a normal deviate by G. W. Hill's series
 * (Algorithm 395, Comm. ACM 13 (1970) 617-619).
 */

/**
 * F(t), the probability that Student's t is at most t. Relative error below 1e-11 in both tails.
 * @param t any number, infinities included
 * @param df degrees of freedom, 1 or more, not necessarily whole; Infinity is the standard normal
 * @throws RangeError if t is not a number or df is less than 1
 */
export function studentCdf(t: number, df: number): number {
  checkDf(df);
  if (Number.isNaN(t)) throw new RangeError('t is not a number');
  const tail = upperTail(Math.abs(t), df);
  return t > 0 ? 1 - tail : tail;
}

/**
 * f(t), the density of Student's t:
 *
 *     f(t) = Γ((ν+1)/2) / (Γ(ν/2) √(πν)) · (1 + t²/ν)^(−(ν+1)/2)     (Abramowitz and Stegun 26.7)
 *
 * @param df as for `studentCdf`
 * @throws RangeError as `studentCdf`
 */
export function studentPdf(t: number, df: number): number {
  checkDf(df);
  if (Number.isNaN(t)) throw new RangeError('t is not a number');
  return Math.exp(logDensity(Math.abs(t), df));
}

/**
 * The t with F(t) = p, to ten digits and better.
 * Newton's method on the logarithm of the tail as a function of ln t, in which far tails are nearly straight.
 * @param p probability in [0, 1]; 0 and 1 give ∓∞
 * @param df as for `studentCdf`
 * @throws RangeError if p is not a probability or df is less than 1
 */
export function studentQuantile(p: number, df: number): number {
  checkDf(df);
  const z = normalQuantile(p);
  if (df === Infinity || p === 0.5 || !Number.isFinite(z)) return z;
  return p < 0.5 ? -deviateOfTail(p, -z, df) : deviateOfTail(1 - p, z, df);
}

/** From here on Hill's series is exact to rounding and the continued fraction would take hundreds of terms. */
const HILL_FROM = 10_000;

function checkDf(df: number): void {
  if (!(df >= 1)) throw new RangeError(`${String(df)} degrees of freedom; accepted: 1 or more`);
}

/** P(T > t) for t ≥ 0. */
function upperTail(t: number, df: number): number {
  if (df === Infinity) return normalCdf(-t);
  const r = t / Math.sqrt(df);
  if (df >= HILL_FROM) return normalCdf(-hillDeviate(logOnePlusSquare(r), df));
  const a = df / 2;
  const logX = -logOnePlusSquare(r);
  // 1 − x would lose every digit of a small t.
  const y = 1 / (1 + 1 / (r * r));
  const front = (Math.exp(a * logX) * Math.sqrt(y) * gammaRatio(a)) / Math.sqrt(Math.PI);
  const x = Math.exp(logX);
  // The fraction converges fast below the mean of the beta distribution; above it, the mirrored one does.
  if (x < (a + 1) / (a + 2.5)) return (0.5 * front) / (a * betaFraction(a, 0.5, x));
  return 0.5 - front / betaFraction(0.5, a, y);
}

/** ln f(t) for t ≥ 0. */
function logDensity(t: number, df: number): number {
  if (df === Infinity) return -(t * t) / 2 - Math.log(2 * Math.PI) / 2;
  const front = gammaRatio(df / 2) / Math.sqrt(Math.PI * df);
  return Math.log(front) - ((df + 1) / 2) * logOnePlusSquare(t / Math.sqrt(df));
}

/** ln(1 + r²), where r² may overflow. */
function logOnePlusSquare(r: number): number {
  return r < 1e8 ? Math.log1p(r * r) : 2 * Math.log(r);
}

/**
 * 1 + d₁/(1 + d₂/(1 + …)) of DLMF 8.17.22-23, so that I_x(a, b) = x^a (1 − x)^b / (a B(a, b) · this).
 * Lentz's numerators and denominators never vanish here: every partial sum is positive for x below the mean.
 */
function betaFraction(a: number, b: number, x: number): number {
  let value = 1;
  let numerator = 1;
  let denominator = 0;
  for (let j = 1; j <= 2000; j += 1) {
    const term = betaTerm(a, b, x, j);
    denominator = 1 / (1 + term * denominator);
    numerator = 1 + term / numerator;
    const factor = numerator * denominator;
    value *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return value;
}

function betaTerm(a: number, b: number, x: number, j: number): number {
  const m = Math.floor(j / 2);
  const scale = (a + j - 1) * (a + j);
  return j % 2 === 0 ? (m * (b - m) * x) / scale : (-(a + m) * (a + b + m) * x) / scale;
}

/**
 * Γ(a + 1/2) / Γ(a), a ≥ 1/2: the series DLMF 5.11.14 in 1/(a − 1/4)², with a raised to where three terms do.
 * Through ln Γ the digits of a large a would cancel.
 */
function gammaRatio(a: number): number {
  let lowered = 1;
  let raised = a;
  while (raised < 100) {
    lowered *= raised / (raised + 0.5);
    raised += 1;
  }
  const w = raised - 0.25;
  const inverse = 1 / (w * w);
  return lowered * Math.sqrt(w) * (1 + inverse * (1 / 64 - (inverse * 19) / 8192));
}

/** The normal deviate with the same tail. `logTerm` is ln(1 + t²/ν). */
function hillDeviate(logTerm: number, df: number): number {
  const a = df - 0.5;
  const b = 48 * a * a;
  const y = a * logTerm;
  const correction = (((-0.4 * y - 3.3) * y - 24) * y - 85.5) / (0.8 * y * y + 100 + b);
  return ((correction + y + 3) / b + 1) * Math.sqrt(y);
}

/** The t > 0 with P(T > t) = tail < 1/2, by steps in ln t from √(ν (exp(z²/ν) − 1)), the leading term of Hill's series. */
function deviateOfTail(tail: number, z: number, df: number): number {
  const w = (z * z) / df;
  let u = (Math.log(df) + w + Math.log(-Math.expm1(-w))) / 2;
  for (let round = 0; round < 60; round += 1) {
    const t = Math.exp(u);
    const logReached = Math.log(upperTail(t, df));
    // In logarithms, since far out the density leaves the range of numbers before the tail does.
    const step = (logReached - Math.log(tail)) * Math.exp(logReached - u - logDensity(t, df));
    if (!Number.isFinite(step)) break;
    u += step;
    if (Math.abs(step) < 1e-14) break;
  }
  return Math.exp(u);
}
