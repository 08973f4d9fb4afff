import { normalCdf, normalDeviate, seededRandom } from '#units';
import { truncatedQuantile, truncatedQuantiles } from './length.js';
import type { Problem, Share, Truncation } from './problem.js';

/** How many values are sampled at a time. */
const AT_ONCE = 25;

/** One standard normal value per scenario, conditioned on what was observed of it; sampled as far as it is asked for. */
export class Draw {
  private values = new Float64Array(64);
  private sampled = 0;

  /** @param sample gives the values of the scenarios in turn */
  constructor(private readonly sample: () => number) {}

  /** @param scenario from 0 */
  at(scenario: number): number {
    if (scenario >= this.sampled) this.extend(scenario + AT_ONCE);
    return this.values[scenario]!;
  }

  private extend(to: number): void {
    if (to > this.values.length) {
      const before = this.values;
      this.values = new Float64Array(Math.max(to, 2 * before.length));
      this.values.set(before);
    }
    const { values, sample } = this;
    for (let k = this.sampled; k < to; k++) values[k] = sample();
    this.sampled = to;
  }
}

/** By draw name. */
export type Draws = ReadonlyMap<string, Draw>;

/**
 * Samples every draw of the problem. The values depend on the seed, the stream of the draw and the number of the
 * scenario only, so two plans of one problem are compared on the same weather (common random numbers).
 */
export function sampleDraws(p: Problem, seed: number): Draws {
  const names = new Set(
    p.lags.flatMap(({ atLeast, atMost }) =>
      [atLeast, atMost].flatMap((length) => (length?.kind === 'uncertain' ? [length.draw] : [])),
    ),
  );
  const streamOf = (name: string): string => p.streams?.[name] ?? name;
  const common = new Map<string, Draw>();
  const inCommon = (name: string): Draw => {
    let draw = common.get(name);
    if (draw === undefined) common.set(name, (draw = new Draw(normalOf(seed, `common ${streamOf(name)}`))));
    return draw;
  };
  return new Map(
    [...names].map((name) => {
      const normal = mixed(normalOf(seed, streamOf(name)), p.shares?.[name] ?? [], inCommon);
      const seen = p.draws[name];
      return [name, new Draw(seen === undefined ? normal : within(normal, seen))];
    }),
  );
}

/**
 * Standard normal values as they are given what was observed: each lies where it lay among all, among what may still be.
 */
function within(normal: () => number, { above = -Infinity, below = Infinity }: Truncation): () => number {
  const quantile = truncatedQuantiles(above, below);
  return () => quantile(normalCdf(normal()));
}

function normalOf(seed: number, stream: string): () => number {
  const random = seededRandom((seed ^ hash(stream)) >>> 0);
  // Half a step off the ends of [0, 1): the generator can return 0, and no length is 0 or infinite.
  return () => normalDeviate((random.next() * 4294967296 + 0.5) / 4294967296);
}

/** What is left of a variance beside its shares is rounding, if it is less than this. */
const NOTHING = 1e-12;

/**
 * A standard normal that has shares in common with others, scenario by scenario: a normal copula, so that what was observed
 * of a draw changes its own values and leaves how it goes with others (R. B. Nelsen, An Introduction to Copulas (2006),
 * section 2.3; from memory).
 */
function mixed(own: () => number, shares: readonly Share[], inCommon: (name: string) => Draw): () => number {
  if (shares.length === 0) return own;
  const draws = shares.map(({ of }) => inCommon(of));
  const weights = shares.map(({ share }) => share);
  const left = 1 - weights.reduce((sum, share) => sum + share * share, 0);
  const rest = left < NOTHING ? 0 : Math.sqrt(left);
  let scenario = 0;
  return () => {
    let z = rest === 0 ? 0 : rest * own();
    for (let k = 0; k < draws.length; k++) z += weights[k]! * draws[k]!.at(scenario);
    scenario++;
    return z;
  };
}

/** The median of a standard normal known to lie above `z` and below `below`. */
export function medianAbove(z: number, below: number): number {
  return normalCdf(-z) < 1e-12 ? z : truncatedQuantile(0.5, z, below);
}

/** FNV-1a over UTF-16 code units (Fowler, Noll and Vo): 32 bits that tell streams apart. */
function hash(stream: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < stream.length; i++) h = Math.imul(h ^ stream.charCodeAt(i), 0x01000193);
  return h >>> 0;
}
