import type { Random } from '#units';
import type { Certainty, Problem } from '../problem.js';
import type { Budget } from './budget.js';
import { placePart } from './place-part.js';
import type { StartBounds } from './start-bounds.js';

/** Conflicts to spend on the place of one component. */
const COMPONENT_LIMIT = 200;

/** How many orders are tried. */
const ATTEMPTS = 8;

/**
 * A first plan: one component after the other is placed as early as those before it leave room (serial schedule
 * generation over whole components, each placed by search). One that finds no room comes first in the next attempt
 * (squeaky wheel: Joslin and Clements, Journal of Artificial Intelligence Research 10, 1999; from memory).
 * @param within what lags and hours leave, by stage number; what must come first is placed first
 * @returns starts by stage number, or null when no order tried left room for all; yields between attempts
 */
export function* insertion(
  p: Problem,
  certainty: Certainty,
  components: readonly (readonly number[])[],
  within: StartBounds,
  random: Random,
  budget: Budget,
): Generator<null, Float64Array | null> {
  const least = (component: readonly number[], of: Float64Array): number =>
    component.reduce((smallest, i) => Math.min(smallest, of[i]!), Infinity);
  let order = components
    .map((component) => ({
      component,
      earliest: least(component, within.least),
      latest: least(component, within.greatest),
    }))
    .sort((a, b) => a.earliest - b.earliest || a.latest - b.latest)
    .map(({ component }) => component);
  for (let attempt = 1; ; attempt++) {
    const starts = Float64Array.from(p.stages, ({ fixed }) => fixed ?? NaN);
    const failed = order.find((component) => {
      const placed = placePart(p, certainty, component, starts, random, budget, COMPONENT_LIMIT);
      if (placed) for (const [i, at] of placed) starts[i] = at;
      return placed === null;
    });
    if (failed === undefined) return starts;
    if (failed === order[0] || attempt === ATTEMPTS || budget.left <= 0) return null;
    order = [failed, ...order.filter((component) => component !== failed)];
    yield null;
    if (budget.stop()) return null;
  }
}
