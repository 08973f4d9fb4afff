import type { NudgeKind } from '#contract';
import type { Nudge, Prisma } from '../generated/client.js';
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

type Row = Pick<
  Nudge,
  'id' | 'stageKey' | 'attempt' | 'kind' | 'text' | 'dueAt' | 'status' | 'version' | 'deliveredAt'
>;

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
 * Must run in a transaction. Locks the run's nudges, so that a delivery comes before or after, not between.
 */
export async function reconcileNudges(
  session: Session,
  target: { workshopId: string; runId: string; revisionId: string },
  desired: readonly DesiredNudge[],
  openStages: ReadonlySet<string>,
): Promise<ReconciledNudges> {
  const { db } = session;
  const { workshopId, runId, revisionId } = target;
  const rows = await db.$queryRaw<Row[]>`
    SELECT id, stage_key AS "stageKey", attempt, kind, text, due_at AS "dueAt", status, version,
      delivered_at AS "deliveredAt"
    FROM nudge
    WHERE workshop_id = ${workshopId}::uuid AND run_id = ${runId}::uuid AND status IN ('waiting', 'delivered')
    ORDER BY id FOR UPDATE`;
  const waiting = new Map(rows.filter((row) => row.status === 'waiting').map((row) => [subject(row), row]));
  const delivered = new Map<string, number>();
  const ahead = surelyAhead(session.now());
  for (const row of rows) {
    if (row.deliveredAt === null || row.deliveredAt > ahead) continue;
    delivered.set(subject(row), Math.max(delivered.get(subject(row)) ?? -Infinity, row.dueAt.getTime()));
  }

  const made: (DesiredNudge & { readonly id: string })[] = [];
  const changed: { readonly row: Row; readonly want: DesiredNudge }[] = [];
  const kept: string[] = [];
  for (const want of desired) {
    const wanted = { ...want, stageKey: want.stage };
    const row = waiting.get(subject(wanted));
    waiting.delete(subject(wanted));
    if (row === undefined) {
      const last = delivered.get(subject(wanted)) ?? -Infinity;
      if (want.dueAt.getTime() >= last + ONCE_WITHIN_MS) made.push({ ...want, id: newId(session) });
    } else if (row.dueAt.getTime() === want.dueAt.getTime() && row.text === want.text) {
      kept.push(row.id);
    } else {
      changed.push({ row, want });
    }
  }
  const now = session.now();
  const unwanted = [...waiting.values()].filter((row) => row.dueAt > now || !openStages.has(stageOf(row)));
  const cancelled = unwanted.map(({ id, version }) => ({ id, version }));
  // The workshop is held meanwhile, so it is one statement for each kind of change, and none where there is nothing.
  if (made.length > 0) await db.nudge.createMany({ data: made.map((nudge) => rowOf(nudge, target)) });
  if (changed.length > 0) await change(session, target, changed);
  if (kept.length > 0) {
    await db.nudge.updateMany({ where: { workshopId, id: { in: kept } }, data: { revisionId } });
  }
  if (cancelled.length > 0) {
    const ids = cancelled.map(({ id }) => id);
    await db.nudge.updateMany({ where: { workshopId, id: { in: ids } }, data: { status: 'cancelled' } });
  }
  const moved = [
    ...made.map(({ id, dueAt }) => ({ id, version: 1, dueAt })),
    ...changed.map(({ row, want }) => ({ id: row.id, version: row.version + 1, dueAt: want.dueAt })),
  ];
  return { moved, cancelled };
}

function rowOf(
  { id, stage, attempt, kind, text, dueAt }: DesiredNudge & { readonly id: string },
  target: { workshopId: string; runId: string; revisionId: string },
): Prisma.NudgeCreateManyInput {
  return { id, ...target, stageKey: stage, attempt, kind, text, dueAt, status: 'waiting' };
}

async function change(
  { db }: Session,
  { workshopId, revisionId }: { workshopId: string; revisionId: string },
  changed: readonly { readonly row: Row; readonly want: DesiredNudge }[],
): Promise<void> {
  const ids = changed.map(({ row }) => row.id);
  const texts = changed.map(({ want }) => want.text);
  const times = changed.map(({ want }) => want.dueAt.toISOString());
  await db.$executeRaw`
    UPDATE nudge SET
      text = wanted.text, due_at = wanted.due_at, version = nudge.version + 1, revision_id = ${revisionId}::uuid
    FROM unnest(${ids}::uuid[], ${texts}::text[], ${times}::timestamptz[]) AS wanted (id, text, due_at)
    WHERE nudge.workshop_id = ${workshopId}::uuid AND nudge.id = wanted.id`;
}

function subject(nudge: { stageKey: string; attempt: number; kind: string }): string {
  return `${nudge.stageKey} ${nudge.attempt} ${nudge.kind}`;
}

/** A stage with its attempt, as `openStages` names them. */
export function stageOf(nudge: { stageKey: string; attempt: number }): string {
  return `${nudge.stageKey} ${nudge.attempt}`;
}
