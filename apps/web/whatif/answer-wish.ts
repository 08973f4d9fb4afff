import { findLatestStart, referencedBy, planRuns, readPlanInput, withChange, withRecipes } from '#runs';
import type { PlanOptions, RunsInput } from '#runs';
import { failed, minute, type Result } from '#units';
import type { Base, Outcome, Wish } from './messages.js';

/** The very libraries that the API plans with, on what the API gave. Pure. */
export function answerWish(base: Base, wish: Wish, nowMin: number, scenarios: number): Outcome {
  const options: PlanOptions = { now: minute(nowMin), scenarios, previous: base.previous };
  const input = readPlanInput(base.input);
  if (wish.kind === 'run') {
    return planned(planRuns(runInput(input, wish), { ...options, pins: wish.pins }));
  }
  const order = orderInput(input, wish);
  if (!order.ok) return order;
  if (wish.latestWithOdds === undefined) return planned(planRuns(order.value, options));
  const found = findLatestStart(order.value, { odds: wish.latestWithOdds }, options);
  if (!found.ok) return found;
  const { plan, ...latest } = found.value;
  return { ok: true, plan, latest };
}

function planned(result: ReturnType<typeof planRuns>): Outcome {
  return result.ok ? { ok: true, plan: result.value } : result;
}

function runInput(input: RunsInput, { change, entries = [] }: Wish & { kind: 'run' }): RunsInput {
  const run = input.runs[0]?.key ?? '';
  const changed = change === undefined ? input : withChange(input, change);
  return { ...changed, log: [...changed.log, ...entries.map((entry) => ({ run, entry }))] };
}

/** The order beside what there is. Moulds that its design does not use are for what is left over. */
function orderInput(input: RunsInput, { order, recipes }: Wish & { kind: 'order' }): Result<RunsInput> {
  const design = input.designs.find(({ key }) => key === order.design);
  if (design === undefined) {
    const known = input.designs.map(({ key }) => key);
    const accepted = { kind: 'one-of', values: known } as const;
    return failed({ code: 'design.unknown', path: ['design'], value: order.design, accepted, known });
  }
  const matter = referencedBy(design, input);
  return {
    ok: true,
    value: {
      ...input,
      ...{ designs: [design], fats: matter.fats, recipes: withRecipes(matter.recipes, recipes) },
      ...{ runs: [order], log: [] },
    },
  };
}
