import { Closing } from './closing.js';
import type { CycleSide } from './cycle.js';
import type { Stnu } from './stnu.js';

/**
 * `cycle`: what contradicts itself, each side once, in the order in which the cycle first goes through it. Counted as
 * often as it goes through them, the lengths along it come to less than 0: `max` of a requirement and `min` of a
 * contingent link taken as they are, `min` of a requirement and `max` of a contingent link taken away.
 */
export type Controllability =
  | { readonly controllable: true }
  | { readonly controllable: false; readonly cycle: readonly CycleSide[] };

/**
 * Whether the network is dynamically controllable: whether its points can be executed so that all requirements hold
 * however long the contingent links turn out, each decision resting only on what has come about by then. One may
 * react at the very moment of an observation (Morris, “A structural characterization of temporal dynamic
 * controllability”, CP 2006).
 *
 * The method is the one known as RUL: every contingent end is closed under relaxation, lower and upper case rules by
 * one shortest-path search backwards from it, and the edges that result must leave lower-case and ordinary edges
 * without a negative cycle (Cairo, Hunsberger and Rizzi, “Faster dynamic controllability checking for simple
 * temporal networks with uncertainty”, TIME 2018). What it meets on its way is closed first, by recursion; meeting
 * itself is a negative cycle (Hunsberger and Posenato, “Speeding up the RUL⁻ dynamic-controllability-checking
 * algorithm”, AAAI 2022). Both cited from memory. O(mn + k²n + kn log n) for n points, m requirements and k
 * contingent links.
 * @returns when not controllable, a semi-reducible negative cycle: what it names is uncontrollable by itself
 * @throws RangeError when a contingent link has impossible bounds or two share their end
 */
export function controllability(stnu: Stnu): Controllability {
  check(stnu);
  const cycle = new Closing(stnu).conflict();
  return cycle === null ? { controllable: true } : { controllable: false, cycle };
}

function check({ contingents }: Stnu): void {
  const ends = new Set<number>();
  for (const { from, to, min, max } of contingents) {
    if (!(min >= 0 && min <= max)) {
      throw new RangeError(`contingent link ${from} to ${to}: 0 ≤ min ≤ max asked, ${min} and ${max} given`);
    }
    if (from === to || ends.has(to)) {
      throw new RangeError(`point ${to} must be the end of one contingent link only, and not its own`);
    }
    ends.add(to);
  }
}
