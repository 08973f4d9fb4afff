import type { RunPlan } from '#contract';

type Group = NonNullable<RunPlan['groups']>[number];

/** Groups of a run among which it can be said whose pieces of a part went wrong; none where there is no choice. */
export function groupsToChoose({ groups = [] }: Pick<RunPlan, 'groups'>, part: string): readonly Group[] {
  const having = groups.filter(({ parts }) => parts.includes(part));
  return having.length > 1 ? having : [];
}

/** Pieces that can have gone wrong, at most. @param group its key; absent: of any */
export function mostAffected(
  { count, groups }: Pick<RunPlan, 'count' | 'groups'>,
  part: string,
  group: string | undefined,
): number {
  if (groups === undefined) return count;
  return groups
    .filter(({ key, parts }) => parts.includes(part) && (group === undefined || key === group))
    .reduce((sum, each) => sum + each.count, 0);
}
