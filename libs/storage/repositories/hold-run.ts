import { Prisma } from '../generated/client.js';
import type { Session } from '../session.js';
import type { KnownNudge } from './reconcile-nudges.js';

/** A run that is locked, and what a new plan of it has to know. */
export interface HeldRun {
  readonly key: string;
  readonly version: number;
  /** Of its latest plan; 0: it has none. */
  readonly number: number;
  /** The place of the next entry in the log; null where none is to be logged. */
  readonly sequence: bigint | null;
  readonly nudges: readonly KnownNudge[];
  /** What was asked for besides. */
  readonly basis: string | null;
}

type HeldRow = { [Field in keyof KnownNudge]: KnownNudge[Field] | null } & {
  readonly run_key: string;
  readonly run_version: number;
  readonly latest: number;
  readonly sequence: bigint | null;
  readonly basis: string | null;
};

/**
 * Locks a run and its nudges, so that a delivery comes before or after and not between, and reads what a new plan has
 * to know of them.
 * @param wish.logs an entry is to be appended to its log
 * @param wish.basis read in the same statement
 * @returns null without such a run
 */
export async function holdRun(
  { db, holds }: Session,
  workshopId: string,
  runId: string,
  { logs, basis = Prisma.sql`NULL` }: { readonly logs: boolean; readonly basis?: Prisma.Sql },
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
    SELECT *, ${basis}::text AS basis FROM held LEFT JOIN known ON true`;
  const [first] = rows;
  if (first === undefined) return null;
  const { run_key: key, run_version: version, latest: number, sequence, basis: told } = first;
  return {
    key,
    version,
    number,
    sequence,
    basis: told,
    nudges: rows.filter((row): row is HeldRow & KnownNudge => row.id !== null),
  };
}
