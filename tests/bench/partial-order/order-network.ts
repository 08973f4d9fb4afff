import type { Stnu } from '#planner';
import type { OrderLink, UncertainProject } from './uncertain-project.js';

/**
 * The order as a temporal network with uncertainty: point 2i is the start of activity i, point 2i + 1 its end. If it
 * is controllable, the project can be carried through however long its activities take.
 */
export function orderNetwork(project: UncertainProject, order: readonly OrderLink[]): Stnu {
  const { shortest, longest, lags } = project;
  const sink = shortest.length - 1;
  return {
    points: 2 * shortest.length,
    requirements: [
      ...lags.map(([i, j, min]) => ({ from: 2 * i, to: 2 * j, min })),
      ...order.map(([i, j]) => ({ from: 2 * i + 1, to: 2 * j, min: 0 })),
      ...shortest.flatMap((_, i) => [
        { from: 0, to: 2 * i, min: 0 },
        { from: 2 * i + 1, to: 2 * sink, min: 0 },
      ]),
    ],
    contingents: shortest.map((min, i) => ({ from: 2 * i, to: 2 * i + 1, min, max: longest[i]! })),
  };
}
