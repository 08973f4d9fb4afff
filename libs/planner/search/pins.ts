import type { Problem } from '../problem.js';
import type { Budget } from './budget.js';
import type { Claim, Placed, StageSearch } from './stage-search.js';

/** Conflicts to spend on the question whether one more stage can stay. */
const PIN_LIMIT = 200;

/** Stages that stay, by number, and starts under which they do. */
export interface Pinned {
  readonly stages: readonly number[];
  readonly placed: Extract<Placed, { status: 'placed' }>;
}

/**
 * As many stages of the previous plan as can stay where they were together: no further one could be added within the
 * limit. Of stages that cannot stay together, the one gives way that stood in the way of others most often so far; of
 * those that did equally often, the later one.
 * @returns null when the budget ran out before anything was placed, or nothing can be
 */
export function pinPrevious(p: Problem, search: StageSearch, budget: Budget): Pinned | null {
  const movable = [...p.stages.keys()]
    .filter((i) => p.stages[i]!.fixed === undefined && p.stages[i]!.previous !== undefined)
    .sort((a, b) => p.stages[a]!.previous! - p.stages[b]!.previous!);
  const blamed = new Map<number, number>(movable.map((i) => [i, 0]));
  let pinned = movable;
  let placed: Extract<Placed, { status: 'placed' }>;
  for (;;) {
    const tried = search.place(
      pinned.flatMap((i) => pin(p, search, i)),
      budget,
    );
    if (tried.status === 'placed') {
      placed = tried;
      break;
    }
    const behind = new Set(tried.status === 'impossible' ? tried.core.map(([side]) => side >> 1) : []);
    const core = pinned.filter((i) => behind.has(i));
    for (const i of core) blamed.set(i, blamed.get(i)! + 1);
    const most = Math.max(...core.map((i) => blamed.get(i)!));
    const given = core.findLast((i) => blamed.get(i) === most);
    if (given === undefined) return null;
    pinned = pinned.filter((i) => i !== given);
  }
  for (const i of movable) {
    if (pinned.includes(i)) continue;
    const more = [...pinned, i];
    const tried = search.place(
      more.flatMap((each) => pin(p, search, each)),
      budget,
      PIN_LIMIT,
    );
    if (tried.status !== 'placed') continue;
    pinned = more;
    placed = tried;
  }
  return { stages: pinned, placed };
}

/** The claims by which a stage stays where it was. */
export function pin(p: Problem, search: StageSearch, i: number): Claim[] {
  const at = p.stages[i]!.previous!;
  return [search.notBefore(i, at), search.notAfter(i, at)];
}
