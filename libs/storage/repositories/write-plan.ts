import { Prisma } from '../generated/client.js';
import type { Session } from '../session.js';
import { answerInsert } from './idempotency.js';
import type { LoggedEntry } from './log.js';
import type { PlanRevision, StoredAlong } from './plan-to-save.js';
import type { NudgeChanges } from './reconcile-nudges.js';
import { teachingsUpsert } from './teachings.js';

export interface PlanWrites {
  readonly revision: PlanRevision;
  /** Its document as JSON. */
  readonly text: string;
  readonly nudges: NudgeChanges;
  readonly logged: LoggedEntry | null;
  readonly along: StoredAlong;
}

/**
 * Writes a plan and all that goes with it in one statement: each of a dozen would wait for its turn on a busy machine, and
 * whoever else wants the workshop waits for all of them. Within it, each part writes to rows of its own, so their order
 * does not matter, and references between them are checked at its end.
 */
export async function writePlan(session: Session, writes: PlanWrites): Promise<void> {
  const parts = [revisionInsert(writes), ...nudgeWrites(writes), ...stepWrites(session, writes)];
  const named = parts.map((part, i) => Prisma.sql`${Prisma.raw(`part_${String(i)}`)} AS (${part})`);
  await session.db.$executeRaw`WITH ${Prisma.join(named, ', ')} SELECT 1`;
}

function revisionInsert({ revision, text }: PlanWrites): Prisma.Sql {
  const { id, workshopId, runId, number, madeAt, cause, status, changes } = revision;
  return Prisma.sql`
    INSERT INTO plan_revision (id, workshop_id, run_id, number, made_at, cause, status, document, changes)
    VALUES (${id}::uuid, ${workshopId}::uuid, ${runId}::uuid, ${number}, ${madeAt}, ${JSON.stringify(cause)}::jsonb, ${status},
      ${text}::jsonb, ${JSON.stringify(changes)}::jsonb)`;
}

/** One for each kind of change, none where there is nothing. */
function nudgeWrites({ revision, nudges: { made, changed, kept, cancelled } }: PlanWrites): Prisma.Sql[] {
  const { id: revisionId, workshopId, runId } = revision;
  const writes: Prisma.Sql[] = [];
  if (made.length > 0) {
    const columns = [
      Prisma.sql`${made.map(({ id }) => id)}::uuid[]`,
      Prisma.sql`${made.map(({ stage }) => stage)}::text[]`,
      Prisma.sql`${made.map(({ attempt }) => attempt)}::int[]`,
      Prisma.sql`${made.map(({ kind }) => kind)}::text[]`,
      Prisma.sql`${made.map(({ title }) => title)}::text[]`,
      Prisma.sql`${made.map(({ startAt }) => startAt.toISOString())}::timestamptz[]`,
      Prisma.sql`${made.map(({ lastCallAt }) => lastCallAt?.toISOString() ?? null)}::timestamptz[]`,
      Prisma.sql`${made.map(({ dueAt }) => dueAt.toISOString())}::timestamptz[]`,
    ];
    writes.push(Prisma.sql`
      INSERT INTO nudge (workshop_id, run_id, revision_id, status,
        id, stage_key, attempt, kind, title, start_at, last_call_at, due_at)
      SELECT ${workshopId}::uuid, ${runId}::uuid, ${revisionId}::uuid, 'waiting', each.*
      FROM unnest(${Prisma.join(columns, ', ')}) 
        AS each (id, stage_key, attempt, kind, title, start_at, last_call_at, due_at)`);
  }
  if (changed.length > 0) {
    const ids = changed.map(({ row }) => row.id);
    const titles = changed.map(({ want }) => want.title);
    const starts = changed.map(({ want }) => want.startAt.toISOString());
    const lastCalls = changed.map(({ want }) => want.lastCallAt?.toISOString() ?? null);
    const times = changed.map(({ want }) => want.dueAt.toISOString());
    writes.push(Prisma.sql`
      UPDATE nudge SET
        title = wanted.title, start_at = wanted.start_at, last_call_at = wanted.last_call_at, due_at = wanted.due_at,
        version = nudge.version + 1, revision_id = ${revisionId}::uuid
      FROM unnest(${ids}::uuid[], ${titles}::text[], ${starts}::timestamptz[], ${lastCalls}::timestamptz[],
        ${times}::timestamptz[]) AS wanted (id, title, start_at, last_call_at, due_at)
      WHERE nudge.workshop_id = ${workshopId}::uuid AND nudge.id = wanted.id`);
  }
  if (kept.length > 0) {
    writes.push(Prisma.sql`
      UPDATE nudge SET revision_id = ${revisionId}::uuid
      WHERE workshop_id = ${workshopId}::uuid AND id = ANY (${[...kept]}::uuid[])`);
  }
  if (cancelled.length > 0) {
    const ids = cancelled.map(({ id }) => id);
    writes.push(Prisma.sql`
      UPDATE nudge SET status = 'cancelled'
      WHERE workshop_id = ${workshopId}::uuid AND id = ANY (${ids}::uuid[])`);
  }
  return writes;
}

/** What belongs to the step that made the plan: its entry, what that teaches, the run's state, the answer. */
function stepWrites(session: Session, { revision, logged, along }: PlanWrites): Prisma.Sql[] {
  const { id: revisionId, workshopId, runId } = revision;
  const { teaches, state, answer } = along;
  const writes: Prisma.Sql[] = [];
  if (logged !== null) {
    const { id, sequence, at, loggedAt, entry } = logged;
    writes.push(Prisma.sql`
      INSERT INTO bench_log (id, workshop_id, run_id, sequence, at, logged_at, entry)
      VALUES (${id}::uuid, ${workshopId}::uuid, ${runId}::uuid, ${sequence}, ${at}, ${loggedAt},
        ${JSON.stringify(entry)}::jsonb)`);
    if (teaches !== undefined) {
      writes.push(teachingsUpsert(workshopId, [{ runId, ...teaches, through: sequence }]));
    }
  }
  if (state !== undefined) {
    writes.push(Prisma.sql`
      UPDATE run SET state = ${state.state}, version = version + 1, updated_at = ${session.now()}
      WHERE workshop_id = ${workshopId}::uuid AND id = ${runId}::uuid`);
  }
  if (answer !== undefined) {
    const { response, ...kept } = answer;
    const stored = { ...kept, response: response(logged), revisionId };
    writes.push(answerInsert(session, workshopId, stored));
  }
  return writes;
}
