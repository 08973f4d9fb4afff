import type { PlanDocument, RunOrder, RunTeachings } from '#contract';
import { ok, type Result } from '#units';
import type { PlanOptions, RunsInput } from '../input/input.js';
import { learnedFrom } from '../learned/learned-from.js';
import { teachingsOf } from '../learned/teachings-of.js';
import { occupancyOf } from './occupancy-of.js';
import { planRuns } from './plan-run.js';

/**
 * The input as one of its runs sees it: the others are planned without it and keep the hands and cavities they take,
 * and what they logged still teaches.
 * @param order the run, perhaps with another day or start than in the input
 */
export function inputOfOne(input: RunsInput, order: RunOrder, options: PlanOptions): Result<RunsInput> {
  const rest = input.runs.filter(({ key }) => key !== order.key);
  const log = input.log.filter(({ run }) => run === order.key);
  const alone: RunsInput = { ...input, runs: [order], log };
  if (rest.length === 0) return ok(alone);
  const others: RunsInput = { ...input, runs: rest, log: input.log.filter(({ run }) => run !== order.key) };
  const planned: Result<PlanDocument> = planRuns(others, options);
  if (!planned.ok) return planned;
  const teachings = rest.flatMap((other) => taughtBy(other, input));
  return ok({
    ...alone,
    busy: [...(input.busy ?? []), ...occupancyOf(planned.value, others)],
    learned: learnedFrom(teachings, input.learned),
    ...(input.teachings !== undefined && { teachings: [...input.teachings, ...teachings] }),
  });
}

function taughtBy(
  order: RunOrder,
  { designs, recipes, fats, moulds, log, workshop }: RunsInput,
): RunTeachings[] {
  const design = designs.find(({ key }) => key === order.design);
  if (design === undefined) return [];
  const own = log.filter(({ run }) => run === order.key);
  return [teachingsOf({ order, design, recipes, fats, moulds, log: own }, workshop).teachings];
}
