import type { Random } from '#units';
import type { Certainty, Problem } from '../problem.js';
import type { Budget } from './budget.js';
import { placePart } from './place-part.js';

/** Conflicts for one neighbourhood. */
const CONFLICTS = 60;

/** Components that are freed at first, and at most. */
const LEAST_FREED = 2;
const MOST_FREED = 4;

/**
 * Large-neighbourhood search (Shaw, CP 1998) over whole components: takes a few that are near each other in time out of
 * the schedule (destroy) and lets a search place them better among the others, which stay (repair).
 * @param starts by stage number; replaced by better ones as they are found
 * @yields after each neighbourhood, whether it found better starts; without end
 */
export function* componentLns(
  p: Problem,
  certainty: Certainty,
  components: readonly (readonly number[])[],
  starts: Float64Array,
  random: Random,
  budget: Budget,
): Generator<boolean, never> {
  let size = Math.min(LEAST_FREED, components.length);
  const most = Math.min(MOST_FREED, components.length);
  let idle = 0;
  for (;;) {
    const free = destroyed(components, starts, size, random);
    const better = placePart(p, certainty, free, starts, random, budget, CONFLICTS);
    if (better) for (const [i, at] of better) starts[i] = at;
    idle = better ? 0 : idle + 1;
    // Where small neighbourhoods hold nothing more, larger ones may.
    if (idle >= 2 * components.length) {
      size = size === most ? LEAST_FREED : size + 1;
      idle = 0;
    }
    yield better !== null;
  }
}

/** The stages of a component and of those that begin nearest to it. */
function destroyed(
  components: readonly (readonly number[])[],
  starts: Float64Array,
  size: number,
  random: Random,
): number[] {
  const beginOf = (component: readonly number[]): number =>
    component.reduce((least, i) => Math.min(least, starts[i]!), Infinity);
  const begins = components.map(beginOf);
  const centre = begins[Math.floor(random.next() * begins.length)]!;
  return [...components.keys()]
    .sort((a, b) => Math.abs(begins[a]! - centre) - Math.abs(begins[b]! - centre))
    .slice(0, size)
    .flatMap((k) => components[k]!);
}
