import {
  readStored,
  runOrder,
  type PlanCause,
  type PlanChange,
  type PlanDocument,
  type RunOrder,
} from '#contract';
import type { PlanRevision as Row, Prisma } from '../generated/client.js';
import { fromJson, type Session } from '../session.js';
import { asJudged, withJudgement } from './judgements.js';
import type { PlanRevision, PlanToSave, SavedPlan } from './plan-to-save.js';
import { LIVE, revivedSnapshot, type RunSnapshot } from './runs.js';
import { savePlan } from './save-plan.js';

export type PlanRevisionHead = Omit<PlanRevision, 'document' | 'changes'>;

/** A run that needs hands and moulds, with its latest plan as it was stored. */
export interface LivePlan {
  readonly runId: string;
  readonly revisionId: string;
  readonly order: RunOrder;
  readonly snapshot: RunSnapshot;
  readonly document: PlanDocument;
}

export interface Plans {
  /**
   * Stores a plan as the run's next revision, with what belongs to the step that made it, and makes the run's waiting
   * nudges those that the plan wants: all of it, or nothing.
   * @returns null when there is no such run
   * @throws RangeError when the document has no plan for the run, or the run has another version than the given one
   */
  save(workshopId: string, plan: PlanToSave): Promise<SavedPlan | null>;
  get(workshopId: string, id: string): Promise<PlanRevision | null>;
  latest(workshopId: string, runId: string): Promise<PlanRevision | null>;
  /**
   * The latest plans of the runs that need hands and moulds, the oldest run first. Runs that are over or given up are
   * not even read.
   * @param butRun left out
   */
  ofLiveRuns(workshopId: string, butRun: string | null): Promise<LivePlan[]>;
  byNumber(workshopId: string, runId: string, number: number): Promise<PlanRevision | null>;
  /** All revisions of a run without their documents, the newest first. */
  list(workshopId: string, runId: string): Promise<PlanRevisionHead[]>;
}

export function plans(session: Session): Plans {
  const { db } = session;
  return {
    async save(workshopId, plan) {
      return session.atomically((tx) => savePlan(tx, workshopId, plan));
    },
    async get(workshopId, id) {
      const row = await db.planRevision.findUnique({
        where: { workshopId_id: { workshopId, id } },
        include: withJudgement,
      });
      return row && readRevision(row);
    },
    async latest(workshopId, runId) {
      const row = await db.planRevision.findFirst({
        where: { workshopId, runId },
        orderBy: { number: 'desc' },
        include: withJudgement,
      });
      return row && readRevision(row);
    },
    async ofLiveRuns(workshopId, butRun) {
      const rows = await db.$queryRaw<LiveRow[]>`
        SELECT run.id, plan.id AS revision_id, run.order_ AS "order", run.snapshot, plan.document
        FROM run CROSS JOIN LATERAL (
          SELECT id, document FROM plan_revision
          WHERE workshop_id = run.workshop_id AND run_id = run.id ORDER BY number DESC LIMIT 1) plan
        WHERE run.workshop_id = ${workshopId}::uuid AND run.state = ANY (${[...LIVE]})
          AND run.id IS DISTINCT FROM ${butRun}::uuid
        ORDER BY run.created_at, run.id`;
      return rows.map(({ id, revision_id: revisionId, order, snapshot, document }) => ({
        ...{ runId: id, revisionId },
        order: readStored(runOrder, order),
        snapshot: revivedSnapshot(fromJson<RunSnapshot>(snapshot)),
        document: fromJson<PlanDocument>(document),
      }));
    },
    async byNumber(workshopId, runId, number) {
      const row = await db.planRevision.findUnique({
        where: { workshopId_runId_number: { workshopId, runId, number } },
        include: withJudgement,
      });
      return row && readRevision(row);
    },
    async list(workshopId, runId) {
      const rows = await db.planRevision.findMany({
        where: { workshopId, runId },
        orderBy: { number: 'desc' },
        omit: { document: true, changes: true },
      });
      return rows.map((row) => ({
        ...row,
        status: row.status as PlanDocument['status'],
        cause: fromJson<PlanCause>(row.cause),
      }));
    },
  };
}

interface JudgementRow {
  readonly revisionId: string;
  readonly judgement: Prisma.JsonValue;
}

/** Of the raw query. */
interface LiveRow extends Record<'order' | 'snapshot' | 'document', Prisma.JsonValue> {
  readonly id: string;
  readonly revision_id: string;
}

function readRevision({ run, ...row }: Row & { run: { judgement: JudgementRow | null } }): PlanRevision {
  return {
    ...row,
    status: row.status as PlanDocument['status'],
    cause: fromJson<PlanCause>(row.cause),
    document: asJudged(fromJson<PlanDocument>(row.document), row.id, run.judgement),
    changes: fromJson<PlanChange[]>(row.changes),
  };
}
