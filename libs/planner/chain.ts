import type { Load, ResourceLoads } from './loads.js';

/** `before` ends before `after` starts, by node number. */
export interface Link {
  readonly before: number;
  readonly after: number;
  readonly resource: string;
}

/**
 * Precedences under which a schedule stays resource-feasible however its stages shift: a partial order.
 * Each unit of a resource is handed on from the load that releases it to the next that takes it (chaining:
 * Policella, Cesta, Oddi and Smith, "From precedence constraint posting to partial order schedules", AI
 * Communications 20 (2007) 163-180; cited from memory), the unit released last first.
 * @param starts a schedule that respects the resources
 */
export function chain(all: readonly ResourceLoads[], starts: Float64Array, duration: Float64Array): Link[] {
  const links: Link[] = [];
  for (const { resource, capacity, loads } of all) {
    const ends = (load: Load): number => starts[load.last]! + duration[load.last]!;
    const inOrder = [...loads].sort((a, b) => starts[a.first]! - starts[b.first]! || ends(a) - ends(b));
    let givers: { load: Load | null; units: number }[] = [{ load: null, units: capacity }];
    for (const taker of inOrder) {
      const free = (load: Load | null): boolean => load === null || ends(load) <= starts[taker.first]!;
      const latestFirst = (load: Load | null): number => (load === null ? -Infinity : ends(load));
      let needed = taker.amount;
      // The links are then those the schedule leans on anyway, and early stages keep their freedom.
      for (const giver of [...givers].sort((a, b) => latestFirst(b.load) - latestFirst(a.load))) {
        if (needed === 0) break;
        if (!free(giver.load)) continue;
        const handed = Math.min(needed, giver.units);
        giver.units -= handed;
        needed -= handed;
        if (giver.load !== null && !(giver.load.constant && taker.constant)) {
          links.push({ before: giver.load.last, after: taker.first, resource });
        }
      }
      givers = [...givers.filter((giver) => giver.units > 0), { load: taker, units: taker.amount - needed }];
    }
  }
  return withoutRepeats(links);
}

function withoutRepeats(links: readonly Link[]): Link[] {
  return [...new Map(links.map((link) => [`${link.before} ${link.after} ${link.resource}`, link])).values()];
}
