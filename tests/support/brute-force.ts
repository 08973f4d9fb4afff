import type { Problem, Stage } from '#planner';
import { scheduleFaults } from './check-schedule.js';

/**
 * Whether some assignment of whole starts meets every requirement, by trying them all: the answer that windows and
 * schedules are held against. A partial assignment is judged on the part of the problem that it decides.
 * @param given starts that are not to be tried otherwise
 * @param endBy when set, the latest end of any stage
 */
export function anySchedule(
  p: Problem,
  given: ReadonlyMap<string, number> = new Map(),
  endBy = Infinity,
): boolean {
  const starts = new Map<string, number>();
  const extend = (depth: number): boolean => {
    const stage = p.stages[depth];
    if (stage === undefined) return true;
    for (const at of candidates(p, stage, given)) {
      if (at + stage.duration > endBy) continue;
      starts.set(stage.id, at);
      const part = decidedPart(p, p.stages.slice(0, depth + 1));
      if (scheduleFaults(part, { starts, certainty: 0.5 }).length === 0 && extend(depth + 1)) return true;
    }
    starts.delete(stage.id);
    return false;
  };
  return extend(0);
}

function candidates(p: Problem, stage: Stage, given: ReadonlyMap<string, number>): number[] {
  const at = stage.fixed ?? given.get(stage.id);
  if (at !== undefined) return [at];
  return Array.from({ length: p.until - p.from + 1 }, (_, k) => p.from + k);
}

function decidedPart(p: Problem, stages: readonly Stage[]): Problem {
  const decided = new Set(stages.map((stage) => stage.id));
  const both = ({ from, to }: { from: string; to: string }): boolean => decided.has(from) && decided.has(to);
  return { ...p, stages, lags: p.lags.filter(both), holds: p.holds.filter(both) };
}
