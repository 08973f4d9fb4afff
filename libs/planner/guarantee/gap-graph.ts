import type { Requirement } from '../controllability/stnu.js';

/**
 * Links between points as a graph, for asking how far two points must lie apart. Each question goes only where the
 * links lead from its first point, so many can be asked of a plan of many runs.
 */
export class GapGraph {
  private readonly arcs: { readonly to: number; readonly least: number; readonly link: number }[][];

  /** @param links told apart by their place in the list */
  constructor(points: number, links: readonly Requirement[]) {
    this.arcs = Array.from({ length: points }, () => []);
    links.forEach(({ from, to, min, max }, link) => {
      if (min !== undefined) this.arcs[from]!.push({ to, least: min, link });
      if (max !== undefined) this.arcs[to]!.push({ to: from, least: -max, link });
    });
  }

  /**
   * The least t(to) − t(from) that the links allow, by Bellman and Ford with a queue of the points that moved.
   * @param leftOut links that do not count
   * @returns −∞ when there is no bound, or what can be reached contradicts itself, so that nothing need be proved from it
   */
  leastGap(from: number, to: number, leftOut: ReadonlySet<number> = new Set()): number {
    const points = this.arcs.length;
    const least = new Float64Array(points).fill(-Infinity);
    const moves = new Uint32Array(points);
    const isWaiting = new Uint8Array(points);
    least[from] = 0;
    const waiting = [from];
    for (let next = 0; next < waiting.length; next++) {
      const point = waiting[next]!;
      isWaiting[point] = 0;
      for (const arc of this.arcs[point]!) {
        const bound = least[point]! + arc.least;
        if (bound <= least[arc.to]! || leftOut.has(arc.link)) continue;
        least[arc.to] = bound;
        if (isWaiting[arc.to] === 1) continue;
        // Without a circle of positive length no point waits more often than there are points.
        if (++moves[arc.to]! > points) return -Infinity;
        isWaiting[arc.to] = 1;
        waiting.push(arc.to);
      }
    }
    return least[to]!;
  }
}
