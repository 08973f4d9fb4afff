import type { Problem } from './problem.js';

/**
 * The problem of placing some stages at just these minutes. Those that are fixed stay where they were.
 * @param pins start by stage id
 */
export function pinned(p: Problem, pins: ReadonlyMap<string, number>): Problem {
  if (pins.size === 0) return p;
  const stages = p.stages.map((stage) => {
    const at = pins.get(stage.id);
    if (at === undefined || stage.fixed !== undefined) return stage;
    const earliest = Math.max(at, stage.earliest ?? at);
    return { ...stage, earliest, latest: Math.min(at, stage.latest ?? at), previous: at };
  });
  return { ...p, stages };
}
