import type { Problem } from './problem.js';

/** The stages of each delivery by number; without any named, all stages are one. */
export function deliveriesOf(p: Problem): readonly (readonly number[])[] {
  if (p.deliveries === undefined || p.deliveries.length === 0) return [[...p.stages.keys()]];
  const numbers = new Map(p.stages.map(({ id }, i) => [id, i]));
  return p.deliveries.map((ids) =>
    ids.map((id) => {
      const i = numbers.get(id);
      if (i === undefined) throw new RangeError(`no stage "${id}"`);
      return i;
    }),
  );
}

/** The ends of the last stages of all deliveries, added up: what a plan makes small. */
export function totalEnd(
  deliveries: readonly (readonly number[])[],
  startOf: (stage: number) => number,
  durationOf: (stage: number) => number,
): number {
  return deliveries.reduce((sum, stages) => {
    let last = -Infinity;
    for (const i of stages) last = Math.max(last, startOf(i) + durationOf(i));
    return sum + last;
  }, 0);
}
