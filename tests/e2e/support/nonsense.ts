/**
 * A copy in which every title and note is a word of no language, the same for the same text: whatever is read in a
 * language then is what the program says, not what its user wrote.
 */
export function withNonsense<T>(content: T): T {
  return renamed(content) as T;
}

const given = new Map<string, string>();

/** The word that stands for a text. */
export function nonsenseFor(text: string): string {
  let word = given.get(text);
  if (word === undefined) {
    const [high, low] = [Math.floor(given.size / SYLLABLES.length), given.size % SYLLABLES.length];
    word = `Zu${SYLLABLES[high % SYLLABLES.length] ?? ''}${SYLLABLES[low] ?? ''}x`;
    given.set(text, word);
  }
  return word;
}

const SYLLABLES = ['vo', 'mi', 'ka', 're', 'lu', 'ti', 'bo', 'fe', 'na', 'gu', 'pi', 'da'];
const written = new Set(['title', 'note', 'source']);

function renamed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(renamed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [
      name,
      written.has(name) && typeof inner === 'string' ? nonsenseFor(inner) : renamed(inner),
    ]),
  );
}
