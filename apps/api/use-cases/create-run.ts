import type { CreatedRun, NewRun, PlanCause, RunOrder } from '#contract';
import { referencedBy, unknownName, withRecipes, type RunsInput } from '#runs';
import type { Repositories, RunSnapshot, SavedPlan, StoredAlong, StoredRun } from '#storage';
import type { Services } from '../services.js';
import { invalidInput, keyTaken } from '../problems/api-problem.js';
import { shownRun } from './find-run.js';
import { planRun, storePlan, type PlannedRun } from './make-plan.js';
import type { PlanningChange } from './plan-once.js';
import { orderInput } from './run-input.js';
import type { LearnedBut } from './taught.js';

/** What a new run is made from. */
interface Seen {
  readonly order: RunOrder;
  readonly snapshot: RunSnapshot;
  readonly input: RunsInput;
  readonly now: Date;
}

/** The answer without its plan. */
type Rest = Omit<CreatedRun, 'plan'>;

/** Makes a run from an order: takes its own copy of the design and all that it refers to, and plans it at once. */
export function newRunChange(
  { compute, clock }: Pick<Services, 'compute' | 'clock'>,
  workshopId: string,
  order: NewRun,
): PlanningChange<Seen, PlannedRun, Rest, CreatedRun> {
  return {
    ...{ urgency: 1, runId: null },
    read: (tx, learned) => readForRun(tx, learned, workshopId, order, clock.now()),
    plan: async ({ input, now }) => planRun(compute, workshopId, { input, before: null, now }),
    async store(tx, seen, made, { key }) {
      const { run, saved } = await storeRun(tx, workshopId, seen, made, {
        answer: (stored) => key && { ...key, status: 201, response: () => ({ run: shownRun(stored) }) },
      });
      return { rest: { run: shownRun(run) }, revision: saved.revision, nudges: [saved] };
    },
    answer: (rest, plan) => ({ ...rest, plan }),
  };
}

export async function readForRun(
  tx: Repositories,
  learned: LearnedBut,
  workshopId: string,
  { recipes: changes = [], ...order }: NewRun,
  now: Date,
): Promise<Seen> {
  const library = await takeSnapshot(tx, workshopId, order);
  changes.forEach(({ recipe }, i) => {
    if (library.recipes.some(({ key }) => key === recipe)) return;
    throw invalidInput([unknownName(['recipes', i, 'recipe'], 'recipe', recipe, library.recipes)]);
  });
  if ((await tx.runs.byKey(workshopId, order.key)) !== null) throw keyTaken('run', order.key);
  const snapshot = { ...library, recipes: withRecipes(library.recipes, changes) };
  return { order, snapshot, input: await orderInput(tx, learned, workshopId, order, snapshot), now };
}

interface RunStored {
  /** Of its first plan. */
  readonly cause?: PlanCause;
  /** Kept for a repeated request. */
  readonly answer?: (run: StoredRun) => StoredAlong['answer'];
}

/** The run with its first plan. Must run inside the transaction that holds the workshop. */
export async function storeRun(
  tx: Repositories,
  workshopId: string,
  { order, snapshot, now }: Pick<Seen, 'order' | 'snapshot' | 'now'>,
  made: PlannedRun,
  { cause = { code: 'cause.first-plan' }, answer }: RunStored = {},
): Promise<{ run: StoredRun; saved: SavedPlan }> {
  const created = await tx.runs.create(workshopId, { order, snapshot });
  if (!created.ok) throw keyTaken('run', order.key);
  const run = created.value;
  const kept = answer?.(run);
  return { run, saved: await storePlan(tx, { run, cause, now }, made, { ...(kept && { answer: kept }) }) };
}

/**
 * A copy of the design that an order names and of all that it refers to.
 * @throws ApiProblem when there is no such design
 */
export async function takeSnapshot(
  { library, workshops }: Repositories,
  workshopId: string,
  order: RunOrder,
): Promise<RunSnapshot> {
  const design = await library.designs.byKey(workshopId, order.design);
  if (design === null) {
    const known = await library.designs.list(workshopId);
    throw invalidInput([unknownName(['design'], 'design', order.design, known)]);
  }
  const recipes = await library.recipes.list(workshopId);
  const fats = await library.fats.list(workshopId);
  const workshop = await workshops.get(workshopId);
  const moulds = await library.moulds.list(workshopId);
  return {
    design: design.content,
    ...referencedBy(design.content, {
      recipes: contents(recipes),
      fats: contents(fats),
      moulds: contents(moulds),
    }),
    ...(workshop !== null && { room: workshop.facts.room }),
  };
}

function contents<Content>(stored: readonly { readonly content: Content }[]): Content[] {
  return stored.map(({ content }) => content);
}
