import type { PlanDocument, WhatIf, WhatIfAnswer } from '#contract';
import { checkEntry, comparePlans, keepOpenStages, planRuns, type RunsInput } from '#runs';
import { minuteOfIso, under, type Minute } from '#units';
import { invalidInput, valueOf } from '../problems/api-problem.js';
import { changedInput } from './changed-input.js';

/**
 * The plan that a run would have. With a change it is made afresh, as a remedy is; with entries or pins it moves as
 * little as it can, as after logging or asking for them.
 * @param standing key of the run, its latest plan and the present
 * @throws ApiProblem where an entry cannot be true, or the change makes no sense
 */
export function tryOut(
  input: RunsInput,
  { change, entries, pins = [] }: WhatIf,
  { run, previous, now }: { readonly run: string; readonly previous: PlanDocument; readonly now: Minute },
): WhatIfAnswer {
  const put = pins.map(({ stage, startAt }) => ({ run, stage, startAt: minuteOfIso(startAt) }));
  const planned =
    change === undefined
      ? planRuns(withEntries(input, run, entries), { now, previous, pins: put })
      : planRuns(changedInput(input, change), { now });
  const plan = keepOpenStages(valueOf(planned), previous);
  return { plan, changes: comparePlans(previous, plan) };
}

function withEntries(input: RunsInput, run: string, entries: WhatIf['entries']): RunsInput {
  return entries.reduce((before, entry, i) => {
    const issues = checkEntry(before, run, entry);
    if (issues.length > 0) throw invalidInput(under(['entries', i], issues));
    return { ...before, log: [...before.log, { run, entry }] };
  }, input);
}
