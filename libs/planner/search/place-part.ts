import type { Random } from '#units';
import { compileProblem } from '../compile-problem.js';
import { loadsOf } from '../loads.js';
import type { Certainty, Problem } from '../problem.js';
import type { Budget } from './budget.js';
import { closeBusyTimes } from './close-busy-times.js';
import { EarlySearch } from './early-search.js';
import { nodeStarts } from './node-starts.js';
import { StageSearch } from './stage-search.js';
import { subproblem } from './subproblem.js';

/** What stating a part costs, in conflicts of a small search. */
const SETUP = 5;

/**
 * Places some stages as early as all others, which stay, leave room. It is small work that is not broken off half way,
 * so the budget's `stop` is not asked.
 * @param free by number
 * @param starts by stage number; NaN where a stage has no start yet. Where the free ones have theirs, only better ones
 *   are of interest
 * @returns starts of the free stages by number, or null where there is no room or none was found
 */
export function placePart(
  p: Problem,
  certainty: Certainty,
  free: readonly number[],
  starts: Float64Array,
  random: Random,
  budget: Budget,
  limit: number,
): Map<number, number> | null {
  const isFree = new Set(free);
  const part = subproblem(
    p,
    (i) => isFree.has(i),
    (i) => starts[i]!,
  );
  const net = closeBusyTimes(compileProblem(part, certainty), loadsOf(part));
  const search = StageSearch.over(part, net, random);
  budget.left -= SETUP;
  if (search === null) return null;
  const numbers = new Map(p.stages.map(({ id }, i) => [id, i]));
  const inWhole = part.stages.map(({ id }) => numbers.get(id)!);
  const known = inWhole.map((i) => starts[i]!);
  const first = known.some(Number.isNaN) ? undefined : nodeStarts(net, known);
  const early = new EarlySearch(search, [], first);
  const own = { left: Math.min(limit, budget.left), stop: () => false };
  const before = own.left;
  early.run(own);
  budget.left -= before - own.left;
  const { best } = early;
  if (best === undefined || best === first) return null;
  return new Map(inWhole.flatMap((i, k) => (isFree.has(i) ? [[i, best[k]!] as const] : [])));
}
