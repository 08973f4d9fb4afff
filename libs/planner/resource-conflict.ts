import { seededRandom } from '#units';
import { compileProblem } from './compile-problem.js';
import { minimalConflict } from './conflict.js';
import type { Certainty, Problem, Requirement } from './problem.js';
import { requirementsOf, restrict } from './requirements.js';
import { StageSearch } from './search/stage-search.js';

/**
 * A minimal set of requirements, resources included, that cannot be met together. There must be one. A
 * requirement without which the search reaches no verdict within the limit is kept, and so are all that are left
 * once `stop` says true.
 * @returns requirements; a resource names only the stages whose use of it matters
 */
export function resourceConflict(
  p: Problem,
  certainty: Certainty,
  seed: number,
  limit: number,
  stop: () => boolean = () => false,
): Requirement[] {
  const infeasible = (part: readonly Requirement[]): boolean => {
    if (stop()) return false;
    const rest = restrict(p, part);
    const net = compileProblem(rest, certainty);
    const search = StageSearch.over(rest, net, seededRandom(seed));
    if (search === null) return true;
    return search.place([], { left: limit, stop }).status === 'impossible';
  };
  let kept = minimalConflict(requirementsOf(p), infeasible);
  for (const requirement of kept) {
    if (requirement.kind !== 'resource') continue;
    const others = kept.filter((other) => other !== requirement);
    const stages = minimalConflict(requirement.stages, (part) =>
      infeasible([...others, { ...requirement, stages: part }]),
    );
    kept = [...others, { ...requirement, stages }];
  }
  // Fewer stages on a resource may make another requirement needless.
  return minimalConflict(kept, infeasible);
}
