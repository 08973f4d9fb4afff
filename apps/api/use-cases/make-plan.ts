import type { PlanCause, PlanDocument, PlanView } from '#contract';
import { undecidedReplan, type Replan, type ReplanWish } from '#runs';
import {
  written,
  type HeldRun,
  type LotFacts,
  type PlanRevision,
  type Repositories,
  type RunState,
  type SavedPlan,
  type StoredAlong,
  type StoredRun,
  type Written,
} from '#storage';
import { epochMs, minuteOf, type Result } from '#units';
import type { Compute } from '../compute/compute.js';
import { ApiProblem, invalidInput } from '../problems/api-problem.js';

/** What a run is to be planned from, as it was read. */
export interface PlanWish extends Omit<ReplanWish, 'now' | 'before'> {
  /** Its latest plan; null: it has none yet. */
  readonly before: PlanRevision | null;
  readonly now: Date;
}

/** A plan that can be stored: its document is written out already, as the workshop is held meanwhile. */
export type PlannedRun = Omit<Replan, 'document'> & { readonly document: Written<PlanDocument> };

/**
 * Plans a run anew, beside the event loop; stores nothing.
 * @throws ApiProblem when what the run is made from makes no sense, or stages cannot be where they are pinned
 */
export async function planRun(compute: Compute, workshopId: string, wish: PlanWish): Promise<PlannedRun> {
  const task: ReplanWish = { ...wish, now: minuteOf(wish.now.getTime()), before: wish.before?.document };
  const planned = await orUndecided(task, compute.run('replan', task, { workshopId }));
  if (!planned.ok) throw invalidInput(planned.issues);
  return { ...planned.value, document: written(planned.value.document) };
}

/** Whether a task was ended as it took more time or memory than it may. */
export function tookTooMuch(error: unknown): boolean {
  return error instanceof ApiProblem && error.slug.startsWith('took-too-');
}

/** What was logged must not be lost because there was no time for a plan. */
async function orUndecided(task: ReplanWish, planning: Promise<Result<Replan>>): Promise<Result<Replan>> {
  try {
    return await planning;
  } catch (error) {
    const { before, mustKeep = false } = task;
    if (!tookTooMuch(error) || !mustKeep || before === undefined) throw error;
    return { ok: true, value: undecidedReplan({ ...task, before }) };
  }
}

export interface PlanStep {
  readonly run: StoredRun;
  readonly cause: PlanCause;
  readonly now: Date;
  /** The run, where it is locked already and was not changed since. */
  readonly held?: HeldRun | undefined;
}

/**
 * Stores a plan as the run's next revision, with its nudges and what is stored along; brings the run's state and its lot
 * up to date. Must run inside the transaction that holds the workshop.
 */
export async function storePlan(
  tx: Repositories,
  { run, cause, now, held }: PlanStep,
  { document, changes, nudges }: PlannedRun,
  along: Omit<StoredAlong, 'state'> = {},
): Promise<SavedPlan> {
  const { state, lot } = following(run, document.value);
  const saved = await tx.plans.save(run.workshopId, {
    ...{ runId: run.id, madeAt: now, cause, document, changes },
    nudges: nudges.map(({ stage, attempt, kind, title, startAt, lastCallAt, dueAt }) => ({
      ...{ stage, attempt, kind, title },
      startAt: new Date(epochMs(startAt)),
      lastCallAt: lastCallAt === undefined ? null : new Date(epochMs(lastCallAt)),
      dueAt: new Date(epochMs(dueAt)),
    })),
    ...(held && { held }),
    along: { ...along, ...(state !== run.state && { state: { version: run.version, state } }) },
  });
  if (saved === null) throw new Error(`run ${run.id} is gone`);
  // What made it a lot may have been taken back.
  if (run.state === 'curing' && state !== 'curing') await tx.lots.remove(run.workshopId, run.id);
  if (lot !== null) await tx.lots.put(run.workshopId, run.id, lot);
  return saved;
}

/** The run's state, and its lot once everything is done, as they follow from its plan. */
function following(
  run: StoredRun,
  document: PlanDocument,
): { readonly state: RunState; readonly lot: LotFacts | null } {
  const plan = document.runs.find((p) => p.run === run.key);
  if (plan === undefined) return { state: run.state, lot: null };
  const begun = plan.stages.some((stage) => stage.status !== 'planned');
  const open = plan.stages.some((stage) => stage.status === 'planned');
  const going = open || document.status !== 'planned';
  const state = !begun ? 'planned' : going ? 'making' : 'curing';
  if (state !== 'curing' || plan.ready === null) return { state, lot: null };
  const madeAt = plan.stages.map((stage) => stage.endAt).reduce((last, at) => (at > last ? at : last));
  const lot = {
    title: plan.title,
    count: plan.count,
    madeAt: new Date(madeAt),
    readyLow: new Date(plan.ready.low),
    readyLikely: new Date(plan.ready.likely),
    readyHigh: new Date(plan.ready.high),
  };
  return { state, lot };
}

/** A revision as it is shown. */
export function shownPlan({ number, madeAt, cause, status, document, changes }: PlanRevision): PlanView {
  return { number, madeAt: madeAt.toISOString(), cause, status, document, changes: [...changes] };
}
