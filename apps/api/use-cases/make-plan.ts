import type { PlanDocument, PlanView } from '#contract';
import { chooseNudges, comparePlans, keepOpenStages, planRuns, type RunsInput, type StagePin } from '#runs';
import type { PlanRevision, Repositories, SavedPlan, StoredRun } from '#storage';
import { epochMs, minuteOf, type Result } from '#units';
import { invalidInput, type ApiProblem } from '../problems/api-problem.js';

export interface PlanWish {
  readonly run: StoredRun;
  readonly input: RunsInput;
  readonly cause: string;
  readonly now: Date;
  readonly seed?: number | undefined;
  /** What she put where; without a plan that has it there, none is stored. */
  readonly pins?: readonly StagePin[] | undefined;
  /** Not held to the plan before: a change that may move nothing gains nothing. */
  readonly afresh?: boolean;
  /** Something was logged and must not be lost: input that makes no sense any more is a conflict, not a refusal. */
  readonly mustKeep?: boolean;
  /** The plan to move as little as possible, given the latest one; absent: that one. */
  readonly holdTo?: (latest: PlanDocument) => Promise<PlanDocument>;
}

/**
 * Plans a run anew and stores the plan as its next revision, with its nudges; brings the run's state and its lot up
 * to date. Must run inside the transaction that holds the workshop.
 * @throws ApiProblem when what the run is made from makes no sense, or stages cannot be where they are pinned
 */
export async function makePlan(tx: Repositories, wish: PlanWish): Promise<SavedPlan> {
  const { run, input, now } = wish;
  const before = await tx.plans.latest(run.workshopId, run.id);
  const minute = minuteOf(now.getTime());
  const { seed, pins = [] } = wish;
  const previous = before === null ? undefined : await heldTo(before.document, wish);
  const planned = planRuns(input, { now: minute, seed, previous, pins });
  if (pins.length > 0 && planned.ok && planned.value.status !== 'planned')
    throw noSuchPlan(planned.value, pins);
  const document = documentFrom(planned, before?.document, wish);
  const saved = await tx.plans.save(run.workshopId, {
    runId: run.id,
    madeAt: now,
    cause: wish.cause,
    document,
    changes: before === null ? [] : comparePlans(before.document, document),
    nudges: chooseNudges(document, input.workshop.hours.quiet, minute).map((nudge) => ({
      stage: nudge.stage,
      attempt: nudge.attempt,
      kind: nudge.kind,
      text: nudge.text,
      dueAt: new Date(epochMs(nudge.dueAt)),
    })),
  });
  if (saved === null) throw new Error(`run ${run.id} is gone`);
  await follow(tx, run, document);
  return saved;
}

/** The plan that the new one is held to, if to any. */
async function heldTo(
  latest: PlanDocument,
  { afresh = false, holdTo }: PlanWish,
): Promise<PlanDocument | undefined> {
  if (afresh) return undefined;
  return holdTo === undefined ? latest : holdTo(latest);
}

function noSuchPlan({ conflict }: PlanDocument, pins: readonly StagePin[]): ApiProblem {
  const reasons =
    conflict.length > 0 ? conflict : [{ code: 'plan.undecided', text: 'No such plan was found.' }];
  return invalidInput(
    reasons.map(({ code, text }) => ({
      code,
      path: ['pins'],
      message: text,
      value: pins.map(({ stage }) => stage).join(', '),
      accepted: 'starts that a plan can have',
    })),
  );
}

function documentFrom(
  planned: Result<PlanDocument>,
  before: PlanDocument | undefined,
  { mustKeep = false, now }: PlanWish,
): PlanDocument {
  if (planned.ok) return before === undefined ? planned.value : keepOpenStages(planned.value, before);
  if (!mustKeep || before === undefined) throw invalidInput(planned.issues);
  const conflict = planned.issues.map(({ code, message }) => ({ code, text: message }));
  return {
    ...before,
    madeAt: now.toISOString(),
    status: 'conflict',
    sittings: [],
    odds: null,
    weakLinks: [],
    guarantee: null,
    conflict,
    clash: undefined,
  };
}

/** Lets the run's state, and its lot once everything is done, follow the plan. */
async function follow(tx: Repositories, run: StoredRun, document: PlanDocument): Promise<void> {
  const plan = document.runs.find((p) => p.run === run.key);
  if (plan === undefined) return;
  const begun = plan.stages.some((stage) => stage.status !== 'planned');
  const open = plan.stages.some((stage) => stage.status === 'planned');
  const going = open || document.status !== 'planned';
  const state = !begun ? 'planned' : going ? 'making' : 'curing';
  if (state !== run.state) await tx.runs.update(run.workshopId, run.id, run.version, { state });
  // What made it a lot may have been taken back.
  if (state !== 'curing') await tx.lots.remove(run.workshopId, run.id);
  if (state !== 'curing' || plan.ready === null) return;
  const madeAt = plan.stages.map((stage) => stage.endAt).reduce((last, at) => (at > last ? at : last));
  await tx.lots.put(run.workshopId, run.id, {
    title: plan.title,
    count: plan.count,
    madeAt: new Date(madeAt),
    readyLow: new Date(plan.ready.low),
    readyLikely: new Date(plan.ready.likely),
    readyHigh: new Date(plan.ready.high),
  });
}

/** A revision as it is shown. */
export function shownPlan({ number, madeAt, cause, status, document, changes }: PlanRevision): PlanView {
  return { number, madeAt: madeAt.toISOString(), cause, status, document, changes: [...changes] };
}
