import type { ConflictReason } from '#contract';
import type { Requirement } from '#planner';
import type { RunInHand } from '../run-in-hand.js';
import { splitId } from './describe-conflict.js';

/** `stages`: who hands the resource on, and who takes it. */
export type HandOver = Requirement & { readonly kind: 'resource' };

/**
 * The order in which a plan hands resources on, in the maker's words: hand-overs from stage to stage, joined end to
 * end, one sentence for each line of them.
 */
export function describeOrder(handOvers: readonly HandOver[], hands: readonly RunInHand[]): ConflictReason[] {
  return joined(handOvers).map(({ resource, stages }) => {
    const titles = stages.map((id) => {
      const [run, stage] = splitId(id);
      const title = hands.find((h) => h.run.order.key === run)?.run.stages.get(stage)?.title;
      return `“${title ?? stage}”`;
    });
    const [, key = resource] = resource.split(':');
    const what = resource === 'hands' ? 'Hands go' : `“${key}” goes`;
    return { code: 'plan.order', text: `${what} from ${titles.join(' to ')} in this plan.` };
  });
}

function joined(handOvers: readonly HandOver[]): HandOver[] {
  const lines: HandOver[] = [];
  const left = new Set(handOvers);
  for (const first of handOvers) {
    if (!left.delete(first)) continue;
    let stages = first.stages;
    const next = (at: number, side: number): readonly string[] | undefined => {
      const found = [...left].find(
        (h) => h.resource === first.resource && h.stages.at(side) === stages.at(at),
      );
      if (found !== undefined) left.delete(found);
      return found?.stages;
    };
    for (let more = next(-1, 0); more !== undefined; more = next(-1, 0)) {
      stages = [...stages, ...more.slice(1)];
    }
    for (let more = next(0, -1); more !== undefined; more = next(0, -1)) {
      stages = [...more.slice(0, -1), ...stages];
    }
    lines.push({ ...first, stages });
  }
  return lines;
}
