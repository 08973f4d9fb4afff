import type { Requirement } from '../controllability/stnu.js';

/** The least t(to) − t(from) that the links allow, by Bellman and Ford; −∞ when there is no bound, or none was found. */
export function leastGap(points: number, links: readonly Requirement[], from: number, to: number): number {
  const least = new Float64Array(points).fill(-Infinity);
  least[from] = 0;
  for (let round = 0; round < points; round++) {
    let moved = false;
    const raise = (i: number, bound: number): void => {
      if (bound <= least[i]!) return;
      least[i] = bound;
      moved = true;
    };
    for (const link of links) {
      if (link.min !== undefined) raise(link.to, least[link.from]! + link.min);
      if (link.max !== undefined) raise(link.from, least[link.to]! - link.max);
    }
    if (!moved) return least[to]!;
  }
  // They contradict each other, so nothing need be proved from them.
  return -Infinity;
}
