import type { Edge } from '../learning/lag-edges.js';
import type { Load, ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import type { LagPaths } from './lag-paths.js';
import { orderings } from './orderings.js';
import type { StartBounds } from './start-bounds.js';

/** Two loads of which one must end before the other starts, either way. */
export interface Pair {
  readonly a: Load;
  readonly b: Load;
}

/** What resources ask, as far as lags and hours leave a choice. */
export interface LoadConflicts {
  readonly pairs: readonly Pair[];
  /** Orders without a choice. */
  readonly settled: readonly Edge[];
  /** Resources that ask for more than that such pairs do not overlap. */
  readonly crowded: readonly ResourceLoads[];
}

export function loadConflicts(
  net: Network,
  all: readonly ResourceLoads[],
  within: StartBounds,
  paths: LagPaths,
): LoadConflicts {
  const ordering = orderings(net, within, paths);
  const pairs: Pair[] = [];
  const settled: Edge[] = [];
  const crowded = all.filter(({ capacity, loads }) => {
    // A load that may turn out to take no time is in nobody's way.
    const lasts = loads.map((load) => ordering(load, load) === 'cannot');
    let isCrowded = false;
    loads.forEach((b, j) => {
      for (let i = 0; i < j; i++) {
        const a = loads[i]!;
        if (a.constant && b.constant) continue;
        if (a.amount + b.amount <= capacity || !lasts[i] || !lasts[j]) {
          isCrowded = true;
          continue;
        }
        const [ab, ba] = [ordering(a, b), ordering(b, a)];
        if (ab === 'must' || ba === 'must') continue;
        if (ab === 'may' && ba === 'may') pairs.push({ a, b });
        // Where neither can be, the edge fails, as it should.
        else settled.push(ab === 'may' ? apart(net, a, b) : apart(net, b, a));
      }
    });
    const amount = loads.reduce((sum, load) => sum + load.amount, 0);
    const tooLarge = loads.some((load) => load.amount > capacity && !load.constant);
    return tooLarge || (isCrowded && amount > capacity);
  });
  return { pairs, settled, crowded };
}

/**
 * Adds to the paths what follows from pairs that can come in one order only, until no more follows.
 * @returns false where some pair can come in neither
 */
export function settlePairs(
  net: Network,
  all: readonly ResourceLoads[],
  within: StartBounds,
  paths: LagPaths,
): boolean {
  const ordering = orderings(net, within, paths);
  const pairs = all.flatMap(({ capacity, loads }) => {
    const lasting = loads.filter((load) => ordering(load, load) === 'cannot');
    return lasting.flatMap((a, k) =>
      lasting.slice(k + 1).flatMap((b): [Load, Load][] => {
        return a.amount + b.amount > capacity && !(a.constant || b.constant)
          ? [
              [a, b],
              [b, a],
            ]
          : [];
      }),
    );
  });
  for (let found = true; found;) {
    found = false;
    for (const [a, b] of pairs) {
      if (ordering(b, a) !== 'cannot' || ordering(a, b) === 'must') continue;
      if (!paths.tighten(a.last, b.first, net.duration[a.last]!)) return false;
      // Between nodes that have no lags nothing can follow.
      if (ordering(a, b) === 'must') found = true;
    }
  }
  return true;
}

/** `before` ends before `after` starts. @param choice on which that hangs, if on any */
export function apart(net: Network, before: Load, after: Load, choice = -1): Edge {
  return { from: 2 * before.last, to: 2 * after.first, weight: net.duration[before.last]!, choice };
}
