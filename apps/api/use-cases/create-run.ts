import type { NewRun, RunOrder } from '#contract';
import type { Repositories, RunSnapshot, SavedPlan, StoredRun } from '#storage';
import { matterOf, unknownName, withRecipes } from '#runs';
import { invalidInput, keyTaken } from '../problems/api-problem.js';
import { makePlan } from './make-plan.js';
import { runInput } from './run-input.js';

/**
 * Makes a run from an order: takes its own copy of the design and all that it refers to, and plans it at once.
 * Must run inside the transaction that holds the workshop.
 */
export async function createRun(
  tx: Repositories,
  workshopId: string,
  { recipes: changes = [], ...order }: NewRun,
  now: Date,
): Promise<{ run: StoredRun; saved: SavedPlan }> {
  const library = await takeSnapshot(tx, workshopId, order);
  changes.forEach(({ recipe }, i) => {
    if (library.recipes.some(({ key }) => key === recipe)) return;
    throw invalidInput([unknownName(['recipes', i, 'recipe'], 'recipe', recipe, library.recipes)]);
  });
  const snapshot = { ...library, recipes: withRecipes(library.recipes, changes) };
  const created = await tx.runs.create(workshopId, { order, snapshot });
  if (!created.ok) throw keyTaken('run', order.key);
  const run = created.value;
  const saved = await makePlan(tx, { run, input: await runInput(tx, run), cause: 'first plan', now });
  return { run, saved };
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
    ...matterOf(design.content, {
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
