import type { FatFacts } from './fat-facts.js';

/**
 * The keys most like what was typed, best first, so that a slip or a trade name finds its fat.
 * Likeness is the edit distance (Wagner and Fischer, J. ACM 21 (1974) 168-173) over the longer length,
 * taken between any telling word typed and any telling word of a fat's key, title or other names; among fats that share the likest
 * word, between all that was typed and the whole key, title or other name.
 * @returns `count` keys, fewer when the table has fewer
 */
export function nearestFats(
  typed: string,
  fats: Iterable<Pick<FatFacts, 'key' | 'title' | 'aliases'>>,
  count: number,
): string[] {
  const whole = [typed.toLowerCase()];
  const words = [...whole, ...tellingWords(typed)];
  return [...fats]
    .map(({ key, title, aliases = [] }) => {
      const names = [key, title, ...aliases].map((name) => name.toLowerCase());
      const named = [...names, ...names.flatMap(tellingWords)];
      return { key, unlike: unlikeness(words, named), unlikeWhole: unlikeness(whole, names) };
    })
    .sort((a, b) => a.unlike - b.unlike || a.unlikeWhole - b.unlikeWhole || (a.key < b.key ? -1 : 1))
    .slice(0, count)
    .map(({ key }) => key);
}

const tellingNothing = new Set(['oil', 'butter', 'fat', 'seed', 'high', 'low', 'refined', 'unrefined']);

function tellingWords(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}]/u)
    .filter((word) => word.length > 2 && !tellingNothing.has(word));
}

function unlikeness(wanted: readonly string[], offered: readonly string[]): number {
  return Math.min(
    ...wanted.flatMap((a) => offered.map((b) => editDistance(a, b) / Math.max(a.length, b.length, 1))),
  );
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const swapped = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(swapped, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1));
    }
    previous = current;
  }
  return previous[b.length] ?? 0;
}
