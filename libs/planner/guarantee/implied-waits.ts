import { difference, type Curve } from './curve.js';
import { leastGap } from './least-gap.js';
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
  let kept = [...openings];
  for (const each of openings) {
    const { wait, curve } = each;
    const rest = kept.filter((other) => other !== each);
    const alike = rest.filter(
      (other) => other.wait.to === wait.to && other.wait.length.draw === wait.length.draw,
    );
    if (alike.length === 0) continue;
    const all = [...links, ...rest.map((other) => ({ ...other.wait, min: other.curve.low }))];
    const isImplied = alike.some(
      (other) =>
        leastGap(points, all, wait.from, other.wait.from) + difference(curve, other.curve).least >= 0,
    );
    if (isImplied) kept = rest;
  }
  return kept;
}
