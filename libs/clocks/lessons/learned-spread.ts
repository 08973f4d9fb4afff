import { normalCdf, normalQuantile } from '#units';
import { SLIP_SPREAD } from './recipe-likelihood.js';

/** A spread of batches and ln of how likely it is, up to a constant. */
export interface SpreadMass {
  readonly spread: number;
  readonly log: number;
}

/** Points that a cubic goes through; fewer spreads are taken as they are. */
const FOR_CUBIC = 4;
/** Between two spreads that were summed over, so many steps. */
const FINE = 6;
/** Ends of the band of 80 %. */
const Z90 = normalQuantile(0.9);

/**
 * The spread whose band of 80 % is that of all spreads together, each with its share, slips among them: what lies far out may
 * be soap as well.
 *
 * After many batches the likelihood is far narrower than from one spread of the prior to the next, so ln of it is laid through
 * them as a cubic in ln κ.
 * @param likeliest the most that each spread can be, in rising order, logarithms evenly spaced
 * @param summed by spread: how likely it is in truth, up to a factor; absent where it hardly counts
 */
export function learnedSpread(
  likeliest: readonly SpreadMass[],
  summed: ReadonlyMap<number, number>,
  slips: number,
): number {
  const known = likeliest.map(({ spread, log }) => ({ spread, log, mass: summed.get(spread) ?? 0 }));
  const best = known.reduce((a, b) => (b.mass > a.mass ? b : a));
  // Of what was not summed the height is known, and the width is about that of the others.
  const logs = known.map(({ mass, log }) => (mass > 0 ? Math.log(mass / best.mass) : log - best.log));
  if (known.length < FOR_CUBIC) {
    return spreadOf(
      known.map(({ spread }, i) => ({ spread, share: Math.exp(logs[i]!) })),
      slips,
    );
  }
  const ends = known.map(({ spread }) => Math.log(spread));
  const shares: { spread: number; share: number }[] = [];
  for (let i = 0; i + 1 < known.length; i += 1) {
    for (let k = 0; k < FINE; k += 1) {
      const along = k / FINE;
      shares.push({
        spread: Math.exp(ends[i]! + along * (ends[i + 1]! - ends[i]!)),
        share: Math.exp(between(logs, i, along)),
      });
    }
  }
  shares.push({ spread: known.at(-1)!.spread, share: Math.exp(logs.at(-1)!) });
  return spreadOf(shares, slips);
}

/** The cubic of Lagrange through four neighbours. */
function between(values: readonly number[], i: number, along: number): number {
  const first = Math.min(Math.max(0, i - 1), values.length - FOR_CUBIC);
  const x = i + along - first;
  let sum = 0;
  for (let j = 0; j < FOR_CUBIC; j += 1) {
    let weight = 1;
    for (let k = 0; k < FOR_CUBIC; k += 1) if (k !== j) weight *= (x - k) / (j - k);
    sum += weight * values[first + j]!;
  }
  return sum;
}

function spreadOf(
  shares: readonly { readonly spread: number; readonly share: number }[],
  slips: number,
): number {
  const total = shares.reduce((sum, { share }) => sum + share, 0);
  let [low, high] = [0, 3 * Math.max(...shares.map(({ spread }) => spread))];
  for (let i = 0; i < 30; i += 1) {
    const middle = (low + high) / 2;
    const within = shares.reduce((sum, { spread, share }) => {
      const z = (Z90 * middle) / spread;
      return sum + share * ((1 - slips) * normalCdf(z) + slips * normalCdf(z / SLIP_SPREAD));
    }, 0);
    if (within < 0.9 * total) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
