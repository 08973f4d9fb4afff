import type { ConflictReason } from '#contract';
import type { Problem } from '#planner';
import { splitId } from './describe-conflict.js';
import type { RunInHand } from '../run-in-hand.js';

/**
 * Resources of which one stage or one stretch alone needs more than there is: no plan can help, only a smaller
 * count or more of them.
 */
export function tooFew(problem: Problem, hands: readonly RunInHand[]): ConflictReason[] {
  const needs = [
    ...problem.holds.map((hold) => ({ resource: hold.resource, amount: hold.amount, stage: hold.from })),
    ...problem.stages.flatMap((stage) => stage.uses.map((use) => ({ ...use, stage: stage.id }))),
  ];
  return needs.flatMap(({ resource, amount, stage }) => {
    const capacity = problem.resources.find((r) => r.id === resource)?.capacity ?? 0;
    if (amount <= capacity) return [];
    const [run, key] = splitId(stage);
    const title = hands.find((h) => h.run.order.key === run)?.run.order.title ?? run;
    const [kind, name = resource] = resource.split(':');
    const unit = kind === 'mould' ? `cavities of “${name}”` : `of “${name}”`;
    const text =
      `“${title}” needs ${String(amount)} ${unit} at once and you own ${String(capacity)}: ` +
      'make fewer pieces, or two runs one after the other.';
    return [{ code: 'plan.too-few', text, run, stage: key }];
  });
}
