import type { BatchAmounts, PartAmounts, PlannedStage, RunPlan } from '#contract';
import { fromJson, newId, toJson, type Session } from '../session.js';

export type BatchState = 'planned' | 'poured' | 'spoilt';

export interface StoredBatch {
  readonly id: string;
  /** 1 for the first try; each remake counts up. */
  readonly attempt: number;
  readonly amounts: BatchAmounts;
  readonly state: BatchState;
}

export interface StoredPart {
  readonly id: string;
  readonly key: string;
  readonly title: string;
  readonly kind: PartAmounts['kind'];
  readonly batches: readonly StoredBatch[];
}

/**
 * Brings the parts of a run and their batches in line with a plan. A part that the plan drops stays: something may
 * have been made for it. The amounts of a batch follow the plan until it is poured, and are history after that.
 */
export async function saveParts(
  session: Session,
  workshopId: string,
  runId: string,
  plan: RunPlan,
): Promise<void> {
  for (const { part: key, title, kind, batch } of plan.amounts) {
    const { id: partId } = await session.db.part.upsert({
      where: { workshopId_runId_key: { workshopId, runId, key } },
      create: { id: newId(session), workshopId, runId, key, title, kind },
      update: { title, kind },
      select: { id: true },
    });
    if (batch === undefined) continue;
    for (const [attempt, state] of attemptsOf(key, plan.stages)) {
      await saveBatch(session, { workshopId, partId, attempt }, batch, state);
    }
  }
}

/** The run's parts with their batches, parts by key, batches by attempt. */
export async function listParts(session: Session, workshopId: string, runId: string): Promise<StoredPart[]> {
  const rows = await session.db.part.findMany({
    where: { workshopId, runId },
    orderBy: { key: 'asc' },
    include: { batches: { orderBy: { attempt: 'asc' } } },
  });
  return rows.map((row) => ({
    id: row.id,
    key: row.key,
    title: row.title,
    kind: row.kind as PartAmounts['kind'],
    batches: row.batches.map((batch) => ({
      id: batch.id,
      attempt: batch.attempt,
      amounts: fromJson<BatchAmounts>(batch.amounts),
      state: batch.state as BatchState,
    })),
  }));
}

async function saveBatch(
  session: Session,
  batch: { workshopId: string; partId: string; attempt: number },
  amounts: BatchAmounts,
  state: BatchState,
): Promise<void> {
  const { workshopId, partId, attempt } = batch;
  const where = { workshopId_partId_attempt: { workshopId, partId, attempt } };
  const stored = await session.db.batch.findUnique({ where, select: { state: true } });
  if (stored === null) {
    await session.db.batch.create({
      data: { id: newId(session), ...batch, amounts: toJson(amounts), state },
    });
  } else {
    const follows = stored.state === 'planned' && { amounts: toJson(amounts) };
    await session.db.batch.update({ where, data: { state, ...follows } });
  }
}

/**
 * A batch is made at the first stage of its part, so that stage tells what has become of it; one spoilt later is
 * spoilt as well. A part without a stage of its own, such as one made beforehand, counts as one planned batch.
 */
function attemptsOf(part: string, stages: readonly PlannedStage[]): Map<number, BatchState> {
  const own = stages
    .filter((stage) => stage.part === part)
    .sort((a, b) => Date.parse(a.startAt) - Date.parse(b.startAt));
  const states = new Map<number, BatchState>();
  for (const { attempt, status } of own) {
    if (status === 'spoilt') states.set(attempt, 'spoilt');
    else if (!states.has(attempt)) states.set(attempt, status === 'done' ? 'poured' : 'planned');
  }
  return states.size === 0 ? new Map([[1, 'planned']]) : states;
}
