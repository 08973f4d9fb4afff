import type { RunOrder } from '#contract';
import type { Repositories, RunSnapshot, SavedPlan, StoredRun } from '#storage';
import { unknownName } from '#runs';
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
  order: RunOrder,
  now: Date,
): Promise<{ run: StoredRun; saved: SavedPlan }> {
  const snapshot = await takeSnapshot(tx, workshopId, order);
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
  const parts = design.content.parts.flatMap((part) => (part.kind === 'batch' ? [part] : []));
  const usedRecipes = contents(recipes).filter(({ key }) => parts.some((part) => part.recipe === key));
  const usedFats = new Set(usedRecipes.flatMap((recipe) => recipe.fats.map((share) => share.fat)));
  return {
    design: design.content,
    recipes: usedRecipes,
    fats: contents(fats).filter(({ key }) => usedFats.has(key)),
    ...(workshop !== null && { room: workshop.facts.room }),
    moulds: contents(moulds).filter(({ key }) => parts.some((part) => part.mould === key)),
  };
}

function contents<Content>(stored: readonly { readonly content: Content }[]): Content[] {
  return stored.map(({ content }) => content);
}
