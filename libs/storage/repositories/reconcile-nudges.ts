import type { NudgeKind } from '#contract';
import type { Nudge as Row } from '../generated/client.js';
import { newId, type Session } from '../session.js';
import { surelyAhead } from './undo-early.js';

/** A nudge as a plan wants it. */
export interface DesiredNudge {
  readonly stage: string;
  readonly attempt: number;
  readonly kind: NudgeKind;
  readonly text: string;
  readonly dueAt: Date;
}

/** A plan made anew within this time does not repeat what was said. */
const ONCE_WITHIN_MS = 60 * 60_000;

export interface ReconciledNudges {
  /** New, or with another time or text: to be queued (again) under this version. */
  readonly moved: readonly { readonly id: string; readonly version: number; readonly dueAt: Date }[];
  /** Not wanted any more; their alarms can be taken away. */
  readonly cancelled: readonly { readonly id: string; readonly version: number }[];
}

/**
 * Makes the waiting nudges of a run those that its new plan wants, and touches no more of them than it must:
 * - waiting and not wanted: cancelled;
 * - waiting and wanted just so: kept, under the new revision;
 * - waiting and wanted at another time or with another text: changed, its version raised;
 * - overdue while its stage is still open: left to be delivered late, as a replan must not silence it;
 * - wanted and not waiting: made, unless one for the same stage, attempt and kind was delivered within the hour
 *   before: a plan made anew while she is at it must not tell her again. What a clock that was ahead delivered too
 *   early does not count as said.
 *
 * Must run in a transaction. Locks the run's waiting nudges, so that a delivery comes before or after, not between.
 */
export async function reconcileNudges(
  session: Session,
  target: { workshopId: string; runId: string; revisionId: string },
  desired: readonly DesiredNudge[],
  openStages: ReadonlySet<string>,
): Promise<ReconciledNudges> {
  const { db } = session;
  const { workshopId, runId, revisionId } = target;
  await db.$executeRaw`
    SELECT id FROM nudge
    WHERE workshop_id = ${workshopId}::uuid AND run_id = ${runId}::uuid AND status = 'waiting'
    ORDER BY id FOR UPDATE`;
  const rows = await db.nudge.findMany({
    where: { workshopId, runId, status: { in: ['waiting', 'delivered'] } },
  });
  const waiting = new Map(rows.filter((row) => row.status === 'waiting').map((row) => [subject(row), row]));
  const delivered = new Map<string, number>();
  const ahead = surelyAhead(session.now());
  for (const row of rows) {
    if (row.deliveredAt === null || row.deliveredAt > ahead) continue;
    delivered.set(subject(row), Math.max(delivered.get(subject(row)) ?? -Infinity, row.dueAt.getTime()));
  }

  const moved: { id: string; version: number; dueAt: Date }[] = [];
  const kept: string[] = [];
  for (const want of desired) {
    const wanted = { ...want, stageKey: want.stage };
    const row = waiting.get(subject(wanted));
    waiting.delete(subject(wanted));
    if (row === undefined) {
      const last = delivered.get(subject(wanted)) ?? -Infinity;
      if (want.dueAt.getTime() >= last + ONCE_WITHIN_MS) moved.push(await insert(session, target, want));
    } else if (row.dueAt.getTime() === want.dueAt.getTime() && row.text === want.text) {
      kept.push(row.id);
    } else {
      moved.push(await change(session, row, revisionId, want));
    }
  }
  const now = session.now();
  const unwanted = [...waiting.values()].filter((row) => row.dueAt > now || !openStages.has(stageOf(row)));
  const cancelled = unwanted.map(({ id, version }) => ({ id, version }));
  await db.nudge.updateMany({ where: { workshopId, id: { in: kept } }, data: { revisionId } });
  await db.nudge.updateMany({
    where: { workshopId, id: { in: cancelled.map(({ id }) => id) } },
    data: { status: 'cancelled' },
  });
  return { moved, cancelled };
}

async function insert(
  session: Session,
  target: { workshopId: string; runId: string; revisionId: string },
  { stage, attempt, kind, text, dueAt }: DesiredNudge,
): Promise<{ id: string; version: number; dueAt: Date }> {
  const id = newId(session);
  const data = { id, ...target, stageKey: stage, attempt, kind, text, dueAt, status: 'waiting' };
  await session.db.nudge.create({ data });
  return { id, version: 1, dueAt };
}

async function change(
  { db }: Session,
  row: Row,
  revisionId: string,
  { text, dueAt }: DesiredNudge,
): Promise<{ id: string; version: number; dueAt: Date }> {
  const version = row.version + 1;
  await db.nudge.update({
    where: { workshopId_id: { workshopId: row.workshopId, id: row.id } },
    data: { text, dueAt, version, revisionId },
  });
  return { id: row.id, version, dueAt };
}

function subject(nudge: { stageKey: string; attempt: number; kind: string }): string {
  return `${nudge.stageKey} ${nudge.attempt} ${nudge.kind}`;
}

/** A stage with its attempt, as `openStages` names them. */
export function stageOf(nudge: { stageKey: string; attempt: number }): string {
  return `${nudge.stageKey} ${nudge.attempt}`;
}
