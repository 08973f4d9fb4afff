import type { PlanDocument, WhatIf, WhatIfAnswer } from '#contract';
import { isNonEmpty, minuteOfIso, ok, under, type Minute, type Result } from '#units';
import type { RunsInput } from '../input/input.js';
import { checkEntry } from '../log/check-entry.js';
import { changedInput } from '../remedies/changed-input.js';
import { comparePlans } from '../plan/compare-plans.js';
import { keepOpenStages } from '../plan/keep-open-stages.js';
import { planRuns } from '../plan/plan-run.js';

/**
 * The plan that a run would have. With a change it is made afresh, as a remedy is; with entries or pins it moves as
 * little as it can, as after logging or asking for them.
 * @param runState key of the run, its latest plan, the present, and when the best plan so far will do
 * @returns issues where an entry cannot be true, or the change makes no sense; paths from the root of the wish
 */
export function tryOut(
  input: RunsInput,
  { change, entries, pins = [] }: WhatIf,
  {
    run,
    previous,
    now,
    stop,
  }: {
    readonly run: string;
    readonly previous: PlanDocument;
    readonly now: Minute;
    readonly stop?: (() => boolean) | undefined;
  },
): Result<WhatIfAnswer> {
  const put = pins.map(({ stage, startAt }) => ({ run, stage, startAt: minuteOfIso(startAt) }));
  const tried = change === undefined ? withEntries(input, run, entries) : changedInput(input, change);
  if (!tried.ok) return tried;
  const planned = planRuns(
    tried.value,
    change === undefined ? { now, previous, pins: put, stop } : { now, stop },
  );
  if (!planned.ok) return planned;
  const plan = keepOpenStages(planned.value, previous);
  return ok({ plan, changes: comparePlans(previous, plan) });
}

function withEntries(input: RunsInput, run: string, entries: WhatIf['entries'] = []): Result<RunsInput> {
  let before = input;
  for (const [i, entry] of entries.entries()) {
    const issues = under(['entries', i], checkEntry(before, run, entry));
    if (isNonEmpty(issues)) return { ok: false, issues };
    before = { ...before, log: [...before.log, { run, entry }] };
  }
  return ok(before);
}
