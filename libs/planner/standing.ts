import { chain } from './chain.js';
import { compileProblem } from './compile-problem.js';
import { nextIn } from './domains.js';
import { firstStarts, raise } from './fixed-point.js';
import { firstOverload, loadsOf, type Load } from './loads.js';
import type { Network } from './network.js';
import { withoutDueDates, withoutPreferences } from './preferences.js';
import type { Problem, Schedule } from './problem.js';

/** How often stages that lie over each other are moved apart. */
const MOST_MOVES = 200;

/**
 * A plan that was made before, as a schedule of the problem as it is now: each stage where the plan has it, or as soon after
 * that as hours, known lags and what is taken by others leave it now. Nothing is searched, nothing comes earlier.
 * @param starts by stage id; a stage without one comes as early as the others leave it
 * @returns undefined where the plan cannot be kept so
 */
export function standingSchedule(p: Problem, starts: ReadonlyMap<string, number>): Schedule | undefined {
  const undated = withoutDueDates(p);
  const required = withoutPreferences(undated);
  const x =
    settled(undated, compileProblem(undated, 0.5), starts) ??
    settled(required, compileProblem(required, 0.5), starts) ??
    settled(required, compileProblem(required, 0.5, [], true), starts);
  if (x === undefined) return undefined;
  const precedences = chain(loadsOf(p), x.starts, x.net.duration).flatMap(({ before, after, resource }) => {
    const [first, second] = [p.stages[before], p.stages[after]];
    return first && second ? [{ before: first.id, after: second.id, resource }] : [];
  });
  return { starts: new Map(p.stages.map(({ id }, i) => [id, x.starts[i]!])), precedences, certainty: 0.5 };
}

function settled(
  p: Problem,
  net: Network,
  planned: ReadonlyMap<string, number>,
): { readonly net: Network; readonly starts: Float64Array } | undefined {
  const starts = firstStarts(net);
  p.stages.forEach(({ id, fixed }, i) => {
    const at = planned.get(id);
    if (fixed === undefined && at !== undefined) starts[i] = nextIn(net.domains[i]!, at);
  });
  if (starts.some(Number.isNaN)) return undefined;
  const all = loadsOf(p);
  let seeds: readonly number[] | null = null;
  for (let moves = 0; moves < MOST_MOVES; moves++) {
    if (raise(net, starts, seeds) >= 0) return undefined;
    const over = firstOverload(all, starts, net.duration);
    if (over === undefined) return { net, starts };
    const moved = moveOff(over, net, starts);
    if (moved === undefined) return undefined;
    seeds = [moved];
  }
  return undefined;
}

/** Moves the load that begins last, of those that can, to the first end of another. @returns its first stage */
function moveOff(over: readonly Load[], net: Network, starts: Float64Array): number | undefined {
  const [last] = over
    .filter(({ first }) => net.fixed[first] === 0)
    .sort((a, b) => starts[b.first]! - starts[a.first]!);
  if (last === undefined) return undefined;
  const ends = over.flatMap((load) => (load === last ? [] : [starts[load.last]! + net.duration[load.last]!]));
  const at = nextIn(net.domains[last.first]!, Math.max(starts[last.first]! + 1, Math.min(...ends)));
  if (Number.isNaN(at)) return undefined;
  starts[last.first] = at;
  return last.first;
}
