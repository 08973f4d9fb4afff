import { difference, type Curve } from './curve.js';
import { GapGraph } from './gap-graph.js';
import type { PlanLink, Wait } from './plan-links.js';

/** A wait with the moments it may be for. */
export interface CurvedWait {
  readonly wait: Wait;
  readonly curve: Curve;
}

/**
 * Waits for an opening, without those that others of the same draw imply: of two layers of one recipe, the one poured
 * last is firm last. A wait is left out only where what is left proves its order, so what is left implies all.
 */
export function withoutImplied(
  points: number,
  links: readonly PlanLink[],
  openings: readonly CurvedWait[],
): CurvedWait[] {
  const all = [...links, ...openings.map(({ wait, curve }) => ({ ...wait, min: curve.low }))];
  const graph = new GapGraph(points, all);
  /** By place among all links. */
  const leftOut = new Set<number>();
  openings.forEach(({ wait, curve }, i) => {
    const place = links.length + i;
    leftOut.add(place);
    const isImplied = openings.some(
      (other, k) =>
        !leftOut.has(links.length + k) &&
        other.wait.to === wait.to &&
        other.wait.length.draw === wait.length.draw &&
        graph.leastGap(wait.from, other.wait.from, leftOut) + difference(curve, other.curve).least >= 0,
    );
    if (!isImplied) leftOut.delete(place);
  });
  return openings.filter((_, i) => !leftOut.has(links.length + i));
}
