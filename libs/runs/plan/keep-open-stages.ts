import type { PlanDocument } from '#contract';

/**
 * Where there is no plan from here, what is still open stays where the plan before had it: its times, its nudges and
 * its hold on the moulds are better than none, and the conflict says that they do not hold.
 * @param before the plan before, of the same runs
 */
export function keepOpenStages(document: PlanDocument, before: PlanDocument): PlanDocument {
  if (document.status === 'planned') return document;
  const runs = document.runs.map((run) => {
    const known = new Set(run.stages.map(({ key, attempt }) => `${key}#${String(attempt)}`));
    const old = before.runs.find((each) => each.run === run.run);
    const open = (old?.stages ?? []).filter(
      ({ key, attempt, status }) => status === 'planned' && !known.has(`${key}#${String(attempt)}`),
    );
    const stages = [...run.stages, ...open].sort((a, b) => a.startAt.localeCompare(b.startAt));
    return { ...run, stages, ready: run.ready ?? old?.ready ?? null };
  });
  return { ...document, runs };
}
