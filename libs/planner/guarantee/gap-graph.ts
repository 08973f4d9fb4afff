import type { Requirement } from '../controllability/stnu.js';

/**
 * Links between points as a graph, for asking how far two points must lie apart. Each question goes only where the
 * links lead from its first point, so many can be asked of a plan of many runs.
 */
export class GapGraph {
  private readonly arcs: { readonly to: number; readonly least: number; readonly link: number }[][];
  /** By point: what is known of it in the question at hand, cleared after it where it was reached. */
  private readonly least: Float64Array;
  private readonly moves: Uint32Array;
  private readonly isWaiting: Uint8Array;

  /** @param links told apart by their place in the list */
  constructor(points: number, links: readonly Requirement[]) {
    this.arcs = Array.from({ length: points }, () => []);
    this.least = new Float64Array(points).fill(-Infinity);
    this.moves = new Uint32Array(points);
    this.isWaiting = new Uint8Array(points);
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
    const reached = [from];
    const gap = this.search(from, to, leftOut, reached);
    for (const point of reached) {
      this.least[point] = -Infinity;
      this.moves[point] = this.isWaiting[point] = 0;
    }
    return gap;
  }

  /** @param waiting the first point; all that are reached are added */
  private search(from: number, to: number, leftOut: ReadonlySet<number>, waiting: number[]): number {
    const { arcs, least, moves, isWaiting } = this;
    least[from] = 0;
    for (let next = 0; next < waiting.length; next++) {
      const point = waiting[next]!;
      isWaiting[point] = 0;
      for (const arc of arcs[point]!) {
        const bound = least[point]! + arc.least;
        if (bound <= least[arc.to]! || leftOut.has(arc.link)) continue;
        least[arc.to] = bound;
        if (isWaiting[arc.to] === 1) continue;
        isWaiting[arc.to] = 1;
        waiting.push(arc.to);
        // Without a circle of positive length no point waits more often than there are points.
        if (++moves[arc.to]! > arcs.length) return -Infinity;
      }
    }
    return least[to]!;
  }
}
