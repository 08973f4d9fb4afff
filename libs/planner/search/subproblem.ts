import { stageIndex } from '../compile-problem.js';
import type { Problem, Stage } from '../problem.js';
import { busyProfile, type Taken } from './busy-profile.js';

/**
 * The problem of placing some stages while all others stay: what those use is busy time, and only those that a lag or a
 * hold ties to a free one stand in it, fixed.
 * @param isFree by stage number; no stage that is fixed
 * @param startOf the start of a stage that is not free; NaN where it has none yet and takes no room
 */
export function subproblem(
  p: Problem,
  isFree: (stage: number) => boolean,
  startOf: (stage: number) => number,
): Problem {
  const index = stageIndex(p);
  const touches = ({ from, to }: { from: string; to: string }): boolean =>
    isFree(index(from)) || isFree(index(to));
  const lags = p.lags.filter(touches);
  const holds = p.holds.filter(touches);
  const named = new Set([...lags, ...holds].flatMap(({ from, to }) => [from, to]));
  const stages = p.stages.flatMap((stage, i): Stage[] => {
    if (isFree(i)) return [stage];
    if (!named.has(stage.id)) return [];
    return [{ id: stage.id, duration: stage.duration, uses: stage.uses, fixed: stage.fixed ?? startOf(i) }];
  });
  const kept = new Set(stages.map(({ id }) => id));
  const at = (i: number): number => p.stages[i]!.fixed ?? startOf(i);
  const taken = new Map<string, Taken[]>(p.resources.map(({ id, busy }) => [id, [...busy]]));
  const take = (resource: string, amount: number, first: number, last: number): void => {
    const [from, to] = [at(first), at(last) + p.stages[last]!.duration];
    if (from < to) taken.get(resource)?.push({ from, to, amount });
  };
  p.stages.forEach(({ id, uses }, i) => {
    if (!kept.has(id)) for (const { resource, amount } of uses) take(resource, amount, i, i);
  });
  for (const { resource, amount, from, to } of p.holds) {
    if (!touches({ from, to })) take(resource, amount, index(from), index(to));
  }
  const deliveries = p.deliveries
    ?.map((ids) => ids.filter((id) => kept.has(id)))
    .filter((ids) => ids.some((id) => isFree(index(id))));
  return {
    ...p,
    ...{ stages, lags, holds },
    resources: p.resources.map((resource) => ({
      ...resource,
      busy: busyProfile(taken.get(resource.id) ?? []),
    })),
    ...(deliveries && { deliveries }),
  };
}
