import { seededRandom } from '#units';
import { compileProblem } from './compile-problem.js';
import { leastSolution } from './fixed-point.js';
import { loadsOf } from './loads.js';
import type { Certainty, Problem, Stage } from './problem.js';
import { search } from './search.js';

/**
 * The problem with as many stages as possible tied to their previous starts. All of them, where that can be; else
 * those with a previous start are tied one after the other in the order of the previous plan, each that still leaves
 * a schedule: no further one could be added. Without a schedule found, nothing is tied.
 */
export function keepPrevious(
  p: Problem,
  certainty: Certainty,
  seed: number,
  limit: number,
): { readonly problem: Problem; readonly pinned: ReadonlySet<string> } {
  const movable = p.stages
    .filter((stage) => stage.fixed === undefined && stage.previous !== undefined)
    .sort((a, b) => (a.previous ?? 0) - (b.previous ?? 0));
  const everything = new Set(movable.map((stage) => stage.id));
  if (feasible(pin(p, everything), certainty, seed, limit)) {
    return { problem: pin(p, everything), pinned: everything };
  }
  let pinned = new Set<string>();
  for (const { id } of movable) {
    const more = new Set(pinned).add(id);
    if (feasible(pin(p, more), certainty, seed, limit)) pinned = more;
  }
  return { problem: pin(p, pinned), pinned };
}

function pin(p: Problem, ids: ReadonlySet<string>): Problem {
  const tie = (stage: Stage): Stage => {
    if (!ids.has(stage.id) || stage.previous === undefined) return stage;
    return {
      ...stage,
      earliest: Math.max(stage.previous, stage.earliest ?? -Infinity),
      latest: Math.min(stage.previous, stage.latest ?? Infinity),
    };
  };
  return { ...p, stages: p.stages.map(tie) };
}

function feasible(p: Problem, certainty: Certainty, seed: number, limit: number): boolean {
  const net = compileProblem(p, certainty);
  const root = leastSolution(net);
  return (
    root !== null && search(net, loadsOf(p), root, seededRandom(seed), limit, Infinity).status === 'found'
  );
}
