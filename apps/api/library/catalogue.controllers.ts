import { checkFat, checkRecipe, fatTable, fromSheet } from '#chemistry';
import {
  designReplacement,
  fat,
  fatReplacement,
  mould,
  mouldOf,
  mouldReplacement,
  pieceDesign,
  recipe,
  recipeReplacement,
  storedDesign,
  storedFat,
  storedMould,
  storedRecipe,
} from '#contract';
import { checkDesign, checkMould } from '#runs';
import type { Repositories } from '#storage';
import { libraryController } from './library-controller.js';

export const MouldsController = libraryController({
  path: 'moulds',
  what: 'mould',
  schema: mould,
  stored: storedMould,
  replacement: mouldReplacement,
  repository: ({ library }) => library.moulds,
  check: async (content) => checkMould(content),
  usedBy: async ({ key }, repositories, workshopId) =>
    designsThat(repositories, workshopId, (part) => mouldOf(part) === key),
});

export const FatsController = libraryController({
  path: 'fats',
  what: 'fat',
  schema: fat,
  stored: storedFat,
  replacement: fatReplacement,
  repository: ({ library }) => library.fats,
  check: async (content) => checkFat(fromSheet(content)),
  async usedBy({ key }, { library }, workshopId) {
    const recipes = await library.recipes.list(workshopId);
    return recipes.filter(({ content }) => content.fats.some((f) => f.fat === key)).map(titleOf);
  },
});

export const RecipesController = libraryController({
  path: 'recipes',
  what: 'recipe',
  schema: recipe,
  stored: storedRecipe,
  replacement: recipeReplacement,
  repository: ({ library }) => library.recipes,
  async check(content, { library }, workshopId) {
    const own = await library.fats.list(workshopId);
    return checkRecipe(content, fatTable(own.map(({ content: each }) => fromSheet(each))));
  },
  usedBy: async ({ key }, repositories, workshopId) =>
    designsThat(repositories, workshopId, (part) => part.kind === 'batch' && part.recipe === key),
});

export const DesignsController = libraryController({
  path: 'designs',
  what: 'design',
  schema: pieceDesign,
  stored: storedDesign,
  replacement: designReplacement,
  repository: ({ library }) => library.designs,
  async check(content, { library, workshops }, workshopId) {
    const [fats, moulds, recipes, workshop] = await Promise.all([
      library.fats.list(workshopId),
      library.moulds.list(workshopId),
      library.recipes.list(workshopId),
      workshops.get(workshopId),
    ]);
    if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
    return checkDesign(content, {
      fats: fats.map((f) => f.content),
      moulds: moulds.map((m) => m.content),
      recipes: recipes.map((r) => r.content),
      workshop: workshop.facts,
    });
  },
  usedBy: async () => [],
});

type DesignPart = Awaited<
  ReturnType<Repositories['library']['designs']['list']>
>[number]['content']['parts'][number];

async function designsThat(
  { library }: Repositories,
  workshopId: string,
  uses: (part: DesignPart) => boolean,
): Promise<string[]> {
  const designs = await library.designs.list(workshopId);
  return designs.filter(({ content }) => content.parts.some(uses)).map(titleOf);
}

function titleOf({ content }: { readonly content: { readonly title: string } }): string {
  return content.title;
}
