import type { RunPlan } from '#contract';
import type { ResolvedRun } from './resolve-run.js';

/** What documents tell of the groups of a run, and of parts that none of them has; nothing where all pieces are alike. */
export function presentGroups({
  order: { groups },
  leftOut,
}: ResolvedRun): Pick<RunPlan, 'groups' | 'leftOut'> {
  return {
    ...(groups !== undefined && { groups }),
    ...(leftOut.length > 0 && { leftOut: leftOut.map(({ key, title }) => ({ part: key, title })) }),
  };
}
