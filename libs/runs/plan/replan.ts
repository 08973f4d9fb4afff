import type { ConflictReason, PlanChange, PlanDocument } from '#contract';
import { failed, isoInstant, ok, pathText, type Issue, type Minute, type Result } from '#units';
import type { RunsInput, StagePin } from '../input/input.js';
import { chooseNudges, type ChosenNudge } from './choose-nudges.js';
import { comparePlans } from './compare-plans.js';
import { keepOpenStages } from './keep-open-stages.js';
import { planRuns } from './plan-run.js';

/** What a run is planned anew from. */
export interface ReplanWish {
  readonly input: RunsInput;
  readonly now: Minute;
  readonly seed?: number | undefined;
  /** The latest plan of the run; absent: it has none yet. */
  readonly before?: PlanDocument | undefined;
  /** The plan to move as little as possible; absent: the latest. */
  readonly holdTo?: PlanDocument | undefined;
  /** Stages put where the maker wants them; without a plan that has them there, there is none. */
  readonly pins?: readonly StagePin[] | undefined;
  /** Not held to the plan before: a change that may move nothing gains nothing. */
  readonly afresh?: boolean | undefined;
  /** The best plan so far is the answer soon after it says true. */
  readonly stop?: (() => boolean) | undefined;
  /** Something was logged and must not be lost: input that makes no sense any more is a conflict, not a refusal. */
  readonly mustKeep?: boolean | undefined;
}

/** A run's next plan, with what it moves and what it reminds of. */
export interface Replan {
  readonly document: PlanDocument;
  readonly changes: readonly PlanChange[];
  readonly nudges: readonly ChosenNudge[];
}

/**
 * The next plan of a run. Where no plan is possible, open stages stay where they were, and so do their nudges.
 * @returns issues when what the run is made from makes no sense, or stages cannot be where they are pinned
 */
export function replan(wish: ReplanWish): Result<Replan> {
  const {
    input,
    now,
    seed,
    before,
    holdTo = before,
    pins = [],
    afresh = false,
    mustKeep = false,
    stop,
  } = wish;
  const previous = afresh ? undefined : holdTo;
  const planned = planRuns(input, { now, previous, pins, stop, ...(seed !== undefined && { seed }) });
  if (planned.ok) {
    if (pins.length > 0 && planned.value.status !== 'planned')
      return failed(...noSuchPlan(planned.value, pins));
    return ok(told(before === undefined ? planned.value : keepOpenStages(planned.value, before), wish));
  }
  if (!mustKeep || before === undefined) return planned;
  const conflict = planned.issues.map(({ code, path, value }): ConflictReason => ({
    ...{ code: 'conflict.input', issue: code, path: pathText(path) },
    value: typeof value === 'string' || typeof value === 'number' ? String(value) : null,
  }));
  return ok(told({ ...withoutPlan(before, now), status: 'conflict', conflict }, wish));
}

/**
 * What stands for the next plan where there was no time to make one: what was planned stays where it was.
 * @param wish with the plan before
 */
export function undecidedReplan(wish: ReplanWish & { readonly before: PlanDocument }): Replan {
  return told({ ...withoutPlan(wish.before, wish.now), status: 'undecided' }, wish);
}

function withoutPlan(before: PlanDocument, now: Minute): PlanDocument {
  return {
    ...before,
    ...{ madeAt: isoInstant(now), sittings: [], odds: null, weakLinks: [], guarantee: null },
    ...{ conflict: [], resolution: undefined },
  };
}

function told(document: PlanDocument, { input, before, now }: ReplanWish): Replan {
  return {
    document,
    changes: before === undefined ? [] : comparePlans(before, document),
    nudges: chooseNudges(document, input.workshop.hours.quiet, now),
  };
}

function noSuchPlan({ status }: PlanDocument, pins: readonly StagePin[]): [Issue, ...Issue[]] {
  const code = status === 'conflict' ? 'plan.pins-impossible' : 'plan.undecided';
  return [{ code, path: ['pins'], value: pins.map(({ stage }) => stage) }];
}
