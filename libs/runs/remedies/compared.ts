import type { RunPlan, PlanDocument } from '#contract';
import type { RunsInput } from '../input/input.js';
import type { FullPlan } from '../plan/plan-run.js';

/** A plan as it is and as it would be with a change. */
export interface Compared {
  readonly before: FullPlan;
  readonly after: FullPlan;
  /** Those that each was made from. */
  readonly inputs: { readonly before: RunsInput; readonly after: RunsInput };
  /** Where stages stood until now: the plan, or the one before where there is none. */
  readonly stood: PlanDocument | undefined;
  readonly zone: string;
}

/** Each run with the change beside what it was; a run that the change splits off was part of the one of its design. */
export function runPairs({ before, after }: Compared): { readonly was: RunPlan; readonly now: RunPlan }[] {
  const runs = before.document.runs;
  return after.document.runs.flatMap((now) => {
    const was = runs.find(({ run }) => run === now.run) ?? runs.find(({ design }) => design === now.design);
    return was === undefined ? [] : [{ was, now }];
  });
}

/** Minutes of all sittings of a plan together. */
export function benchMinutes({ sittings }: PlanDocument): number {
  const minutes = sittings.map(({ startAt, endAt }) => (Date.parse(endAt) - Date.parse(startAt)) / 60_000);
  return minutes.reduce((sum, each) => sum + each, 0);
}
