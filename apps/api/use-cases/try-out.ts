import type { PlanDocument, WhatIf, WhatIfAnswer } from '#contract';
import { checkEntry, comparePlans, keepOpenStages, planRuns, withChange, type RunsInput } from '#runs';
import { under, type Minute } from '#units';
import { invalidInput, valueOf } from '../problems/api-problem.js';

/**
 * The plan that a run would have. With a change it is made afresh, as a remedy is; with entries it moves as little as
 * it can, as after logging them.
 * @param run key of the run
 * @param previous its latest plan
 * @throws ApiProblem where an entry cannot be true, or the change makes no sense
 */
export function tryOut(
  input: RunsInput,
  { change, entries }: WhatIf,
  { run, previous, now }: { readonly run: string; readonly previous: PlanDocument; readonly now: Minute },
): WhatIfAnswer {
  const plan =
    change === undefined
      ? valueOf(planRuns(withEntries(input, run, entries), { now, previous }))
      : valueOf(planRuns(withChange(input, change), { now }));
  const kept = keepOpenStages(plan, previous);
  return { plan: kept, changes: comparePlans(previous, kept) };
}

function withEntries(input: RunsInput, run: string, entries: WhatIf['entries']): RunsInput {
  return entries.reduce((before, entry, i) => {
    const issues = checkEntry(before, run, entry);
    if (issues.length > 0) throw invalidInput(under(['entries', i], issues));
    return { ...before, log: [...before.log, { run, entry }] };
  }, input);
}
