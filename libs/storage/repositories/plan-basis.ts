import { Prisma } from '../generated/client.js';
import type { Session } from '../session.js';
import { holdRun, type HeldRun } from './hold-run.js';

/** What a plan was made from, told by versions. */
export interface PlanBasis {
  /**
   * Says by versions what the next plan of a run, or of a run yet to be made, is made from: the workshop's facts, its
   * library, every run that needs hands and moulds, with its latest plan and the end of its log, and what other runs
   * teach. Equal texts say that nothing of it has moved. Null without such a workshop.
   * @param runId this run counts too, whatever its state
   * @param key of an answer, which counts too: another text once it is used
   */
  read(workshopId: string, runId: string | null, key?: string): Promise<string | null>;
  /**
   * The same, in the transaction that holds the workshop, with the run locked for the plan that is to be stored: in one
   * statement, as others wait. Null without such a run.
   */
  hold(workshopId: string, runId: string, key?: string): Promise<HeldRun | null>;
}

export function planBasis(session: Session): PlanBasis {
  return {
    async read(workshopId, runId, key) {
      const rows = await session.db.$queryRaw<{ basis: string | null }[]>`
        SELECT ${basisOf(workshopId, runId, key)} AS basis`;
      return rows[0]?.basis ?? null;
    },
    async hold(workshopId, runId, key) {
      return holdRun(session, workshopId, runId, { logs: true, basis: basisOf(workshopId, runId, key) });
    },
  };
}

function basisOf(workshopId: string, runId: string | null, key: string | undefined): Prisma.Sql {
  return Prisma.sql`(
        SELECT concat_ws(' ', workshop.version,
          (SELECT 'answered' FROM idempotency_key WHERE workshop_id = workshop.id AND key = ${key ?? null}),
          (SELECT string_agg(concat_ws(':', run.id, run.version, plan.number, log.sequence), ',' ORDER BY run.id)
            FROM run
            LEFT JOIN LATERAL (
              SELECT max(number) AS number FROM plan_revision
              WHERE workshop_id = run.workshop_id AND run_id = run.id) plan ON true
            LEFT JOIN LATERAL (
              SELECT max(sequence) AS sequence FROM bench_log
              WHERE workshop_id = run.workshop_id AND run_id = run.id) log ON true
            WHERE run.workshop_id = workshop.id
              AND (run.state IN ('planned', 'making') OR run.id = ${runId}::uuid)),
          (SELECT coalesce(max(version), 0) FROM run_teaching
            WHERE workshop_id = workshop.id AND run_id IS DISTINCT FROM ${runId}::uuid),
          (SELECT string_agg(concat_ws(':', id, version), ',' ORDER BY id) FROM (
            SELECT id, version FROM mould WHERE workshop_id = ${workshopId}::uuid AND archived_at IS NULL
            UNION ALL SELECT id, version FROM fat WHERE workshop_id = ${workshopId}::uuid AND archived_at IS NULL
            UNION ALL SELECT id, version FROM recipe WHERE workshop_id = ${workshopId}::uuid AND archived_at IS NULL
            UNION ALL SELECT id, version FROM piece_design
              WHERE workshop_id = ${workshopId}::uuid AND archived_at IS NULL) library))
        FROM workshop WHERE id = ${workshopId}::uuid)`;
}
