import type { PlanChange, PlanDocument } from '#contract';
import type { PlanRevision as Row } from '../generated/client.js';
import { fromJson, type Session } from '../session.js';
import { listParts, type StoredPart } from './part-rows.js';
import type { ReconciledNudges } from './reconcile-nudges.js';
import { savePlan, type PlanToSave } from './save-plan.js';

export interface PlanRevision {
  readonly id: string;
  readonly workshopId: string;
  readonly runId: string;
  /** 1, 2, 3 … within the run. */
  readonly number: number;
  readonly madeAt: Date;
  /** What made a new plan necessary. */
  readonly cause: string;
  readonly status: PlanDocument['status'];
  readonly document: PlanDocument;
  /** What moved since the revision before. */
  readonly changes: readonly PlanChange[];
}

export type PlanRevisionHead = Omit<PlanRevision, 'document' | 'changes'>;

/** The new revision, and what it changed about the nudges; those in `moved` are to be queued after the commit. */
export interface SavedPlan extends ReconciledNudges {
  readonly revision: PlanRevision;
}

export interface Plans {
  /**
   * Stores a plan as the run's next revision, with its stages, parts and batches, and makes the run's waiting
   * nudges those that the plan wants: all of it, or nothing.
   * @returns null when there is no such run
   * @throws RangeError when the document has no plan for the run
   */
  save(workshopId: string, plan: PlanToSave): Promise<SavedPlan | null>;
  latest(workshopId: string, runId: string): Promise<PlanRevision | null>;
  /** The latest revision of every run that has one. */
  latestOfEach(workshopId: string): Promise<PlanRevision[]>;
  byNumber(workshopId: string, runId: string, number: number): Promise<PlanRevision | null>;
  /** All revisions of a run without their documents, the newest first. */
  list(workshopId: string, runId: string): Promise<PlanRevisionHead[]>;
  /** The run's parts with their batches, by key. */
  parts(workshopId: string, runId: string): Promise<StoredPart[]>;
}

export function plans(session: Session): Plans {
  const { db } = session;
  return {
    async save(workshopId, plan) {
      return session.atomically(async (tx) => {
        const saved = await savePlan(tx, workshopId, plan);
        return saved && { ...saved.nudges, revision: readRevision(saved.row) };
      });
    },
    async latest(workshopId, runId) {
      const row = await db.planRevision.findFirst({
        where: { workshopId, runId },
        orderBy: { number: 'desc' },
      });
      return row && readRevision(row);
    },
    async latestOfEach(workshopId) {
      const newest = await db.$queryRaw<{ id: string }[]>`
        SELECT DISTINCT ON (run_id) id FROM plan_revision
        WHERE workshop_id = ${workshopId}::uuid ORDER BY run_id, number DESC`;
      const rows = await db.planRevision.findMany({
        where: { workshopId, id: { in: newest.map(({ id }) => id) } },
        orderBy: { runId: 'asc' },
      });
      return rows.map(readRevision);
    },
    async byNumber(workshopId, runId, number) {
      const row = await db.planRevision.findUnique({
        where: { workshopId_runId_number: { workshopId, runId, number } },
      });
      return row && readRevision(row);
    },
    async list(workshopId, runId) {
      const rows = await db.planRevision.findMany({
        where: { workshopId, runId },
        orderBy: { number: 'desc' },
        omit: { document: true, changes: true },
      });
      return rows.map((row) => ({ ...row, status: row.status as PlanDocument['status'] }));
    },
    parts: (workshopId, runId) => listParts(session, workshopId, runId),
  };
}

function readRevision(row: Row): PlanRevision {
  return {
    ...row,
    status: row.status as PlanDocument['status'],
    document: documentOfToday(fromJson<PlanDocument | OlderPlan>(row.document)),
    changes: fromJson<PlanChange[]>(row.changes),
  };
}

/** A plan of the first version: its amounts and clocks had another shape. */
type OlderPlan = Omit<PlanDocument, 'schema'> & { readonly schema: 'benchtide.plan/1' };

/** Times and odds of an older plan stay readable; the amounts of its batches stand with the batches. */
function documentOfToday(document: PlanDocument | OlderPlan): PlanDocument {
  // A plan from before guarantees has none.
  const { guarantee = null } = document as Partial<PlanDocument>;
  if (document.schema !== 'benchtide.plan/1') return { ...document, guarantee };
  const runs = document.runs.map((run) => ({ ...run, amounts: [], clocks: [], filling: [] }));
  return { ...document, schema: 'benchtide.plan/2', runs, guarantee };
}
