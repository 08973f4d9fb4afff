import { normalCdf, seededRandom } from '#units';
import { truncatedQuantile } from './length.js';
import type { Problem } from './problem.js';

/** For each draw name, one standard normal value per scenario, conditioned on what was observed of it. */
export type Draws = ReadonlyMap<string, Float64Array>;

/**
 * Samples every draw of the problem. The values depend on the seed, the name of the draw and the number of the
 * scenario only, so two plans of one problem are compared on the same weather (common random numbers).
 */
export function sampleDraws(p: Problem, seed: number, scenarios: number): Draws {
  const names = new Set(
    p.lags.flatMap(({ atLeast, atMost }) =>
      [atLeast, atMost].flatMap((length) => (length?.kind === 'uncertain' ? [length.draw] : [])),
    ),
  );
  return new Map(
    [...names].map((name) => {
      const random = seededRandom((seed ^ hash(name)) >>> 0);
      const { above = -Infinity, below = Infinity } = p.draws[name] ?? {};
      // Half a step off the ends of [0, 1): the generator can return 0, and no length is 0 or infinite.
      const uniform = (): number => (random.next() * 4294967296 + 0.5) / 4294967296;
      const values = new Float64Array(scenarios);
      for (let k = 0; k < scenarios; k++) values[k] = truncatedQuantile(uniform(), above, below);
      return [name, values];
    }),
  );
}

/** The median of a standard normal known to lie above `z` and below `below`. */
export function medianAbove(z: number, below: number): number {
  return normalCdf(-z) < 1e-12 ? z : truncatedQuantile(0.5, z, below);
}

/** FNV-1a over UTF-16 code units (Fowler, Noll and Vo): 32 bits that tell names apart. */
function hash(name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  return h >>> 0;
}
