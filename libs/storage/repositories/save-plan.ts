import type { PlanChange, PlanDocument, PlannedStage } from '#contract';
import type { PlanRevision as Row, Prisma } from '../generated/client.js';
import { newId, toJson, type Session } from '../session.js';
import { saveParts } from './part-rows.js';
import { reconcileNudges, stageOf, type DesiredNudge, type ReconciledNudges } from './reconcile-nudges.js';

export interface PlanToSave {
  readonly runId: string;
  readonly madeAt: Date;
  readonly cause: string;
  /** May plan other runs as well; only the part about this run becomes rows. */
  readonly document: PlanDocument;
  readonly changes: readonly PlanChange[];
  readonly nudges: readonly DesiredNudge[];
}

/** Writes everything that a new revision brings. Must run in a transaction. @returns null without such a run */
export async function savePlan(
  session: Session,
  workshopId: string,
  plan: PlanToSave,
): Promise<{ row: Row; nudges: ReconciledNudges } | null> {
  const { db } = session;
  const { runId, document } = plan;
  // Two plans of one run at once would both take the next number.
  const locked = await db.$queryRaw<{ key: string }[]>`
    SELECT key FROM run WHERE workshop_id = ${workshopId}::uuid AND id = ${runId}::uuid FOR UPDATE`;
  const key = locked[0]?.key;
  if (key === undefined) return null;
  const planned = document.runs.find(({ run }) => run === key);
  if (planned === undefined) throw new RangeError(`The plan says nothing about the run "${key}".`);

  const last = await db.planRevision.aggregate({ where: { workshopId, runId }, _max: { number: true } });
  const row = await db.planRevision.create({
    data: {
      id: newId(session),
      workshopId,
      runId,
      number: (last._max.number ?? 0) + 1,
      madeAt: plan.madeAt,
      cause: plan.cause,
      status: document.status,
      document: toJson(document),
      changes: toJson(plan.changes),
    },
  });
  await db.stage.createMany({
    data: planned.stages.map((stage) => ({
      ...stageRow(stage),
      id: newId(session),
      workshopId,
      runId,
      revisionId: row.id,
    })),
  });
  await saveParts(session, workshopId, runId, planned);
  const open = planned.stages.filter(({ status }) => status === 'planned');
  const openStages = new Set(open.map(({ key: stageKey, attempt }) => stageOf({ stageKey, attempt })));
  const target = { workshopId, runId, revisionId: row.id };
  const nudges = await reconcileNudges(session, target, plan.nudges, openStages);
  return { row, nudges };
}

function stageRow(
  stage: PlannedStage,
): Omit<Prisma.StageCreateManyInput, 'id' | 'workshopId' | 'runId' | 'revisionId'> {
  const { key, attempt, title, kind, status } = stage;
  return {
    key,
    attempt,
    title,
    kind,
    status,
    partKey: stage.part,
    startAt: new Date(stage.startAt),
    endAt: new Date(stage.endAt),
    opensAt: new Date(stage.opensAt),
    bestAt: new Date(stage.bestAt),
    lastCallAt: dateOrNull(stage.lastCallAt),
    surelyOpenAt: dateOrNull(stage.surelyOpenAt),
    surelyUntil: dateOrNull(stage.surelyUntil),
  };
}

function dateOrNull(instant: string | null): Date | null {
  return instant === null ? null : new Date(instant);
}
