import type { ConflictReason } from '#contract';
import type { Network } from './network-references.js';
import { resourceNamed, stageNamed } from './network-references.js';

/**
 * Resources of which one stage or one stretch alone needs more than there is: no plan can help, only a smaller
 * count or more of them.
 */
export function checkCapacity({ problem, references }: Network): ConflictReason[] {
  const needs = [
    ...problem.holds.map((hold) => ({ resource: hold.resource, amount: hold.amount, stage: hold.from })),
    ...problem.stages.flatMap((stage) => stage.uses.map((use) => ({ ...use, stage: stage.id }))),
  ];
  return needs.flatMap(({ resource, amount: needed, stage }): ConflictReason[] => {
    const owned = problem.resources.find((r) => r.id === resource)?.capacity ?? 0;
    if (needed <= owned) return [];
    const [at, what] = [stageNamed(references, stage), resourceNamed(references, resource)];
    return [{ code: 'conflict.too-few', stage: at, resource: what, needed, owned }];
  });
}
