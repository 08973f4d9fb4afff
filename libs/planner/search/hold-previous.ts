import { contains } from '../domains.js';
import { firstStarts, raise } from '../fixed-point.js';
import { firstOverload, type ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import type { Problem } from '../problem.js';

/**
 * The previous plan as it stands, if it still holds: no search, only a look. Stages that had no place in it come as
 * early as it leaves them.
 * @returns null where a stage has to move, or there is no previous plan
 */
export function holdPrevious(p: Problem, net: Network, all: readonly ResourceLoads[]): Float64Array | null {
  const kept = [...p.stages.keys()].filter(
    (i) => p.stages[i]!.fixed === undefined && p.stages[i]!.previous !== undefined,
  );
  if (kept.length === 0) return null;
  const x = firstStarts(net);
  if (x.some(Number.isNaN)) return null;
  for (const i of kept) x[i] = p.stages[i]!.previous!;
  if (raise(net, x, null) >= 0) return null;
  const isKept = kept.every((i) => x[i] === p.stages[i]!.previous && contains(net.domains[i]!, x[i]!));
  return isKept && firstOverload(all, x, net.duration) === undefined ? x : null;
}
