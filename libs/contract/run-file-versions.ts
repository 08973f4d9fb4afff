/** What a run file of today calls itself. */
export const RUN_FILE = 'benchtide.run-file/3';
/** The form before, which is still read. */
const EARLIER = 'benchtide.run-file/2';

/** Whether a file was written in the form before: its stages did not yet wait for the soap by themselves. */
export function isEarlierRunFile(content: unknown): boolean {
  return isRecord(content) && content['schema'] === EARLIER;
}

/**
 * A file of the form before as one of today; anything else as it is. Stages of the form before had only the waits that
 * were written down; read as one of today, their kinds bring the others. Its recipes had one fragrance each.
 * @param content of a file, not checked yet; not changed
 */
export function asLatestRunFile(content: unknown): unknown {
  if (!isRecord(content) || !isEarlierRunFile(content)) return content;
  const { recipes } = content;
  return {
    ...content,
    schema: RUN_FILE,
    ...(Array.isArray(recipes) && { recipes: recipes.map(withFragrances) }),
  };
}

/** The one fragrance of a recipe as a list; it needed no name before. */
function withFragrances(recipe: unknown): unknown {
  if (!isRecord(recipe) || !isRecord(recipe['fragrance'])) return recipe;
  const { fragrance, ...rest } = recipe;
  const named = { key: 'fragrance', title: 'Fragrance', behaviour: 'mild', ...fragrance };
  return { ...rest, fragrances: [named] };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
