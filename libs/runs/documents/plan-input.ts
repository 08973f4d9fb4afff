import type { PlanInput } from '#contract';
import { isoInstant, minuteOfIso, type Minute } from '#units';
import { nothingLearned } from '../clocks/nothing-learned.js';
import type { RunsInput } from '../input/input.js';

/** The input as it crosses a wire. @param madeAt when it was read */
export function writePlanInput(input: RunsInput, madeAt: Minute): PlanInput {
  const { workshop, busy = [], learned = nothingLearned } = input;
  return {
    schema: 'benchtide.plan-input/2',
    madeAt: isoInstant(madeAt),
    workshop,
    ...{ moulds: [...input.moulds], fats: [...input.fats], recipes: [...input.recipes] },
    ...{ designs: [...input.designs], runs: [...input.runs], log: [...input.log] },
    busy: busy.map(({ from, to, ...taken }) => ({
      ...taken,
      fromAt: isoInstant(from),
      toAt: isoInstant(to),
    })),
    learned,
  };
}

/** The same, read. */
export function readPlanInput({ schema: _form, madeAt: _at, busy, ...rest }: PlanInput): RunsInput {
  return {
    ...rest,
    busy: busy.map(({ fromAt, toAt, ...taken }) => ({
      ...taken,
      ...{ from: minuteOfIso(fromAt), to: minuteOfIso(toAt) },
    })),
  };
}
