import type { Distances } from './longest-paths.js';
import type { Project } from './project.js';

/**
 * A moment before which no schedule ends: activities that start late and have much after them need their units of a
 * resource for their durations in between (after Carlier and Latapie, RAIRO 25, 1991; from memory).
 */
export function energyBound({ dur, cap, req }: Project, { count, at }: Distances): number {
  const head = (i: number): number => at[i]!;
  const tail = (i: number): number => at[i * count + count - 1]! - dur[i]!;
  let bound = at[count - 1]!;
  cap.forEach((capacity, r) => {
    const users = [...dur.keys()].filter((i) => dur[i]! > 0 && req[i]![r]! > 0);
    users.sort((i, j) => tail(j) - tail(i));
    for (const earliest of new Set(users.map(head))) {
      let energy = 0;
      for (const i of users) {
        if (head(i) < earliest) continue;
        energy += dur[i]! * req[i]![r]!;
        bound = Math.max(bound, earliest + Math.ceil(energy / capacity) + tail(i));
      }
    }
  });
  return bound;
}
