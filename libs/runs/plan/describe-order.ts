import type { ConflictReason } from '#contract';
import type { Requirement } from '#planner';
import { resourceNamed, stageNamed, type NetworkReferences } from './network-references.js';

/** `stages`: who hands the resource on, and who takes it. */
export type HandOver = Requirement & { readonly kind: 'resource' };

/** The order in which a plan hands resources on: hand-overs from stage to stage, joined end to end. */
export function describeOrder(
  handOvers: readonly HandOver[],
  references: NetworkReferences,
): ConflictReason[] {
  return joined(handOvers).map(({ resource, stages }) => ({
    code: 'conflict.order',
    resource: resourceNamed(references, resource),
    stages: stages.map((id) => stageNamed(references, id)),
  }));
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
