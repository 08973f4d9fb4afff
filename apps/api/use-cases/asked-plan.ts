import type { PlanRequest, PlanView } from '#contract';
import type { RunsInput, StagePin } from '#runs';
import type { PlanRevision, StoredRun } from '#storage';
import { minuteOfIso } from '#units';
import type { Services } from '../services.js';
import { findRunToPlan } from './find-run.js';
import { planRun, storePlan, type PlannedRun } from './make-plan.js';
import type { PlanningChange } from './plan-once.js';
import { runInput } from './run-input.js';

interface Seen {
  readonly run: StoredRun;
  readonly input: RunsInput;
  readonly before: PlanRevision | null;
  readonly now: Date;
  readonly pins: readonly StagePin[] | undefined;
}

/** Plans a run anew because someone asked for it, with stages where they were put. */
export function askedPlan(
  { compute, clock }: Pick<Services, 'compute' | 'clock'>,
  workshopId: string,
  runId: string,
  { seed, pins, afresh }: PlanRequest,
): PlanningChange<Seen, PlannedRun, null, PlanView> {
  return {
    ...{ urgency: 1, runId },
    async read(tx, learned) {
      const run = await findRunToPlan(tx, workshopId, runId);
      const input = await runInput(tx, learned, run);
      const before = await tx.plans.latest(workshopId, runId);
      const put = pins?.map(({ stage, startAt }) => ({ run: run.key, stage, startAt: minuteOfIso(startAt) }));
      return { run, input, before, now: clock.now(), pins: put };
    },
    plan: async ({ input, before, now, pins: put }) =>
      planRun(compute, workshopId, { input, before, now, seed, pins: put, afresh }),
    async store(tx, { run, now }, made, { key, held }) {
      const answer = key && { ...key, status: 201, response: () => null };
      const saved = await storePlan(tx, { run, cause: { code: 'cause.asked' }, now, held }, made, {
        ...(answer && { answer }),
      });
      return { rest: null, revision: saved.revision, nudges: [saved] };
    },
    answer: (_rest, plan) => plan,
  };
}
