import type { PlanChange, PlanDocument, PlannedStage } from '#contract';

/**
 * What moved between two plans, and why: the difference a replan shows before it is accepted.
 * @returns changes in the order of their new times; a stage that stayed where it was is not listed
 */
export function comparePlans(before: PlanDocument, after: PlanDocument): PlanChange[] {
  const old = stagesById(before);
  const fresh = stagesById(after);
  const changes: PlanChange[] = [];
  for (const [id, { run, stage }] of fresh) {
    const was = old.get(id)?.stage;
    const base = {
      run,
      stage: stage.key,
      attempt: stage.attempt,
      fromAt: was?.startAt ?? null,
      toAt: stage.startAt,
    };
    if (was === undefined) changes.push({ ...base, change: 'added', why: stage.why });
    else if (was.status === 'planned' && stage.status !== 'planned')
      changes.push({ ...base, change: stage.status, why: stage.why });
    else if (stage.startAt > was.startAt) changes.push({ ...base, change: 'later', why: stage.why });
    else if (stage.startAt < was.startAt) changes.push({ ...base, change: 'earlier', why: stage.why });
  }
  for (const [id, { run, stage }] of old) {
    if (fresh.has(id)) continue;
    const { key, title, attempt, startAt: fromAt } = stage;
    const base = { run, stage: key, title, attempt, fromAt, toAt: null };
    const code = after.status === 'planned' ? 'why.left-out' : 'why.no-plan';
    changes.push({ ...base, change: 'removed', why: [{ code }] });
  }
  return changes.sort((a, b) => (a.toAt ?? a.fromAt ?? '').localeCompare(b.toAt ?? b.fromAt ?? ''));
}

function stagesById(plan: PlanDocument): Map<string, { readonly run: string; readonly stage: PlannedStage }> {
  return new Map(
    plan.runs.flatMap(({ run, stages }) =>
      stages.map((stage) => [`${run}/${stage.key}#${String(stage.attempt)}`, { run, stage }] as const),
    ),
  );
}
