import type { PlanChange, PlanDocument } from '#contract';
import type { PlanRevision as Row } from '../generated/client.js';
import { newId, type Session } from '../session.js';
import { reconcileNudges, stageOf, type DesiredNudge, type ReconciledNudges } from './reconcile-nudges.js';

export interface PlanToSave {
  readonly runId: string;
  readonly madeAt: Date;
  readonly cause: string;
  /** May plan other runs as well; only the stages of this run are reminded of. */
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
    SELECT key FROM run WHERE workshop_id = ${workshopId}::uuid AND id = ${runId}::uuid FOR NO KEY UPDATE`;
  const key = locked[0]?.key;
  if (key === undefined) return null;
  const planned = document.runs.find(({ run }) => run === key);
  if (planned === undefined) throw new RangeError(`The plan says nothing about the run "${key}".`);

  // As text: the client takes several times as long for a value, and the workshop is held meanwhile.
  const [documentText, changesText] = [JSON.stringify(document), JSON.stringify(plan.changes)];
  const id = newId(session);
  // One statement after the run is locked, so that it sees every number there is.
  const [numbered] = await db.$queryRaw<{ number: number }[]>`
    INSERT INTO plan_revision (id, workshop_id, run_id, number, made_at, cause, status, document, changes)
    SELECT ${id}::uuid, ${workshopId}::uuid, ${runId}::uuid, coalesce(max(number), 0) + 1, ${plan.madeAt},
      ${plan.cause}, ${document.status}, ${documentText}::jsonb, ${changesText}::jsonb
    FROM plan_revision WHERE workshop_id = ${workshopId}::uuid AND run_id = ${runId}::uuid
    RETURNING number`;
  if (numbered === undefined) throw new Error('no plan was inserted');
  const row: Row = {
    ...{ id, workshopId, runId, number: numbered.number },
    ...{ madeAt: plan.madeAt, cause: plan.cause, status: document.status },
    document: JSON.parse(documentText) as Row['document'],
    changes: JSON.parse(changesText) as Row['changes'],
  };
  const open = planned.stages.filter(({ status }) => status === 'planned');
  const openStages = new Set(open.map(({ key: stageKey, attempt }) => stageOf({ stageKey, attempt })));
  const target = { workshopId, runId, revisionId: row.id };
  const nudges = await reconcileNudges(session, target, plan.nudges, openStages);
  return { row, nudges };
}
