import { stageIndex } from '../compile-problem.js';
import type { Problem } from '../problem.js';

/**
 * The stages that can move, by number, in groups that lags and holds tie together: usually one for each run. Stages that
 * cannot move tie nothing. Groups come by their first stage.
 */
export function componentsOf(p: Problem): number[][] {
  const index = stageIndex(p);
  const parent = [...p.stages.keys()];
  const rootOf = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root] = parent[parent[root]!]!;
    return root;
  };
  const isFixed = (i: number): boolean => p.stages[i]!.fixed !== undefined;
  for (const { from, to } of [...p.lags, ...p.holds]) {
    const [i, j] = [index(from), index(to)];
    if (!isFixed(i) && !isFixed(j)) parent[rootOf(Math.max(i, j))] = rootOf(Math.min(i, j));
  }
  const groups = new Map<number, number[]>();
  for (const i of p.stages.keys()) {
    if (isFixed(i)) continue;
    const root = rootOf(i);
    const group = groups.get(root);
    if (group === undefined) groups.set(root, [i]);
    else group.push(i);
  }
  return [...groups.values()];
}
