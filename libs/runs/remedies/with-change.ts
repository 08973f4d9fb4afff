import type { NewRun, Recipe, RemedyChange, RunOrder } from '#contract';
import type { RunsInput } from '../input/input.js';
import { withoutPieces, withPieces } from '../input/pieces.js';

/**
 * The input with a remedy's change carried out. What the change does not name stays the same object.
 * The result is checked like any other input: a change may make no sense for it.
 */
export function withChange(input: RunsInput, change: RemedyChange): RunsInput {
  switch (change.kind) {
    case 'recipe':
      return { ...input, recipes: withRecipes(input.recipes, [change]) };
    case 'start':
      return withOrder(input, change.run, (order) => [{ ...order, startAfter: change.startAfter }]);
    case 'count':
      return withOrder(input, change.run, (order) => [withPieces(order, change.count)]);
    case 'ready-by':
      return withOrder(input, change.run, (order) => [{ ...order, readyBy: change.readyBy }]);
    case 'split':
      return withOrder(input, change.run, (order) => [withoutPieces(order, change.rest), change.rest]);
    case 'hours':
      return withDay(input, change);
    case 'cavities': {
      const moulds = input.moulds.map((mould) =>
        mould.key === change.mould ? { ...mould, cavities: change.cavities } : mould,
      );
      return { ...input, moulds };
    }
    case 'drop-parts': {
      const lines = change.entries.map((entry) => ({ run: change.run, entry }));
      return { ...input, log: [...input.log, ...lines] };
    }
    case 'plan-anew':
      return input;
  }
}

/** Water, told as a lye, and hardener of a recipe; what is absent stays. */
export type RecipeChange = NonNullable<NewRun['recipes']>[number];

/** Recipes with other shares. What no change names stays the same object. */
export function withRecipes(recipes: readonly Recipe[], changes: readonly RecipeChange[]): Recipe[] {
  return recipes.map((recipe) =>
    changes.filter((each) => each.recipe === recipe.key).reduce(changed, recipe),
  );
}

/** A recipe says its water in one way only, so a lye that is given takes the place of the others. */
function changed(recipe: Recipe, change: RecipeChange): Recipe {
  const { lyeConcentrationPercent, sodiumLactatePercent = recipe.sodiumLactatePercent } = change;
  if (lyeConcentrationPercent === undefined) return { ...recipe, sodiumLactatePercent };
  const { waterPerLye: _ratio, waterPercentOfFats: _share, ...rest } = recipe;
  return { ...rest, sodiumLactatePercent, lyeConcentrationPercent };
}

function withOrder(input: RunsInput, run: string, change: (order: RunOrder) => RunOrder[]): RunsInput {
  return { ...input, runs: input.runs.flatMap((order) => (order.key === run ? change(order) : [order])) };
}

function withDay(input: RunsInput, change: Extract<RemedyChange, { kind: 'hours' }>): RunsInput {
  const { workshop } = input;
  const others = workshop.hours.exceptions.filter(({ date }) => date !== change.date);
  const exceptions = [...others, { date: change.date, spans: change.spans }];
  return { ...input, workshop: { ...workshop, hours: { ...workshop.hours, exceptions } } };
}
