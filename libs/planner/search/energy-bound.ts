import type { ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import { NO_PATH } from './longest-paths.js';
import type { LagPaths } from './lag-paths.js';
import type { StartBounds } from './start-bounds.js';

/** A load as far as it counts: no earlier than its head, and its tail after it before the delivery ends. */
interface User {
  readonly head: number;
  readonly tail: number;
  readonly energy: number;
}

/**
 * A minute before which a delivery does not end: loads that start late and have much after them need their units of a
 * resource for their durations in between (after Carlier and Latapie, RAIRO 25, 1991; from memory).
 * @param delivery nodes of which the last end counts
 */
export function energyBound(
  net: Network,
  all: readonly ResourceLoads[],
  { least }: StartBounds,
  paths: LagPaths,
  delivery: readonly number[],
): number {
  const fixed = [...net.domains.keys()].filter((i) => net.fixed[i] === 1 && i < net.stageCount);
  const headOf = (i: number): number =>
    fixed.reduce((head, f) => {
      const d = paths.far(f, i);
      return d === NO_PATH ? head : Math.max(head, net.domains[f]!.from[0]! + d);
    }, least[i]!);
  const tailOf = (i: number): number =>
    delivery.reduce((tail, j) => {
      const d = paths.far(i, j);
      return d === NO_PATH ? tail : Math.max(tail, d + net.duration[j]! - net.duration[i]!);
    }, -Infinity);
  let bound = -Infinity;
  for (const { capacity, loads } of all) {
    const users = loads.flatMap(({ first, last, amount, constant }): User[] => {
      if (constant || first !== last || amount > capacity) return [];
      const tail = tailOf(first);
      return tail === -Infinity ? [] : [{ head: headOf(first), tail, energy: amount * net.duration[first]! }];
    });
    users.sort((a, b) => b.tail - a.tail);
    for (const earliest of new Set(users.map(({ head }) => head))) {
      let energy = 0;
      for (const user of users) {
        if (user.head < earliest) continue;
        energy += user.energy;
        bound = Math.max(bound, earliest + Math.ceil(energy / capacity) + user.tail);
      }
    }
  }
  return bound;
}
