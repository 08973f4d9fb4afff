import { newId, type Session } from '../session.js';
import type { PlanRevision, PlanToSave, SavedPlan } from './plan-to-save.js';
import { reconcileNudges, stageOf, toldToQueue, type KnownNudge } from './reconcile-nudges.js';
import { writePlan } from './write-plan.js';

/**
 * Writes everything that a new revision brings, in two statements. Must run in a transaction.
 * @returns null without such a run
 */
export async function savePlan(
  session: Session,
  workshopId: string,
  plan: PlanToSave,
): Promise<SavedPlan | null> {
  const { runId, document, along = {} } = plan;
  const held = await holdRun(session, workshopId, runId, along.entry !== undefined);
  if (held === null) return null;
  const { key, version, number, sequence, nudges } = held;
  if (along.state !== undefined && along.state.version !== version) {
    throw new RangeError(`The run "${key}" is at version ${String(version)} by now.`);
  }
  const planned = document.value.runs.find(({ run }) => run === key);
  if (planned === undefined) throw new RangeError(`The plan says nothing about the run "${key}".`);

  const open = planned.stages.filter(({ status }) => status === 'planned');
  const openStages = new Set(open.map(({ key: stageKey, attempt }) => stageOf({ stageKey, attempt })));
  const now = session.now();
  const changes = reconcileNudges(nudges, plan.nudges, openStages, { now, newId: () => newId(session) });
  const revision: PlanRevision = {
    ...{ id: newId(session), workshopId, runId, number: number + 1 },
    ...{ madeAt: plan.madeAt, cause: plan.cause, status: document.value.status },
    ...{ document: document.value, changes: plan.changes },
  };
  const logged =
    along.entry === undefined
      ? null
      : {
          ...{ id: along.entry.id, workshopId, runId, sequence: Number(sequence) },
          ...{ at: new Date(along.entry.entry.at), loggedAt: now, entry: along.entry.entry },
        };
  await writePlan(session, { revision, text: document.text, nudges: changes, logged, along });
  return { ...toldToQueue(changes), revision, logged };
}

interface HeldRun {
  readonly key: string;
  readonly version: number;
  /** Of its latest plan; 0: it has none. */
  readonly number: number;
  /** The place of the next entry in the log; null where none is to be logged. */
  readonly sequence: bigint | null;
  readonly nudges: readonly KnownNudge[];
}

type HeldRow = { [Field in keyof KnownNudge]: KnownNudge[Field] | null } & {
  readonly run_key: string;
  readonly run_version: number;
  readonly latest: number;
  readonly sequence: bigint | null;
};

/**
 * Locks a run and its nudges, so that a delivery comes before or after and not between, and reads what a new plan has
 * to know of them.
 */
async function holdRun(
  { db, holds }: Session,
  workshopId: string,
  runId: string,
  logs: boolean,
): Promise<HeldRun | null> {
  if (holds !== workshopId) {
    // Two plans of one run at once would both take the next number. A statement of its own, so that the next one sees
    // what was stored by whoever had the run before.
    await db.$executeRaw`
      SELECT 1 FROM run WHERE workshop_id = ${workshopId}::uuid AND id = ${runId}::uuid FOR NO KEY UPDATE`;
  }
  const rows = await db.$queryRaw<HeldRow[]>`
    WITH held AS MATERIALIZED (
      SELECT key AS run_key, version AS run_version,
        (SELECT coalesce(max(number), 0) FROM plan_revision
          WHERE workshop_id = ${workshopId}::uuid AND run_id = ${runId}::uuid) AS latest,
        CASE WHEN ${logs} THEN nextval(pg_get_serial_sequence('bench_log', 'sequence')) END AS sequence
      FROM run WHERE workshop_id = ${workshopId}::uuid AND id = ${runId}::uuid FOR NO KEY UPDATE),
    known AS (
      SELECT id, stage_key AS "stageKey", attempt, kind, title, start_at AS "startAt", last_call_at AS "lastCallAt",
        due_at AS "dueAt", status, version, delivered_at AS "deliveredAt"
      FROM nudge
      WHERE workshop_id = ${workshopId}::uuid AND run_id = ${runId}::uuid AND status IN ('waiting', 'delivered')
      ORDER BY id FOR UPDATE)
    SELECT * FROM held LEFT JOIN known ON true`;
  const [first] = rows;
  if (first === undefined) return null;
  const { run_key: key, run_version: version, latest: number, sequence } = first;
  return {
    key,
    version,
    number,
    sequence,
    nudges: rows.filter((row): row is HeldRow & KnownNudge => row.id !== null),
  };
}
