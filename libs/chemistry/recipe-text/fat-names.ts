import type { FatFacts } from '../fats/fat-facts.js';

/** Every name by which fats are found: folded, and the keys of the fats that it may mean. */
export type FatNames = ReadonlyMap<string, readonly string[]>;

/** Said of many fats, and telling none of them apart from another that is shipped. */
const qualities = new Set([
  ...[
    'organic',
    'bio',
    'kba',
    'virgin',
    'extra',
    'pure',
    'raw',
    'natural',
    'naturlich',
    'fresh',
    'cold',
    'pressed',
  ],
  ...[
    'kaltgepresst',
    'kaltgepresstes',
    'nativ',
    'natives',
    'native',
    'reines',
    'rein',
    'refined',
    'unrefined',
  ],
  ...[
    'raffiniert',
    'raffiniertes',
    'unraffiniert',
    'unraffiniertes',
    'desodoriert',
    'deodorised',
    'deodorized',
  ],
  ...[
    'of',
    'from',
    'the',
    'a',
    'von',
    'vom',
    'aus',
    'melted',
    'geschmolzen',
    'geschmolzenes',
    'liquid',
    'solid',
  ],
  ...['bleached', 'rbd', 'food', 'grade'],
]);

/** A title may be said without these: “coconut” is coconut oil. */
const endings = new Set(['oil', 'butter', 'fat', 'wax']);

/** Lower case, without accents, `oel` for `öl` and the like as one: “Kokosöl”, “Kokosoel” and “KOKOSÖL” are alike. */
export function foldedWord(word: string): string {
  const plain = word.toLowerCase().replaceAll('ß', 'ss').normalize('NFKD').replaceAll(/\p{M}/gu, '');
  return plain.endsWith('oel') ? `${plain.slice(0, -3)}ol` : plain.replaceAll('’', "'");
}

/** @returns the words of the name that tell fats apart; all of them where none would be left */
export function withoutQualities(folded: readonly string[]): readonly string[] {
  const telling = folded.filter((word) => !qualities.has(word));
  return telling.length > 0 ? telling : folded;
}

/** Names that fats are given come first; a name cut short counts only where no fat was given it. */
export function fatNames(fats: Iterable<Pick<FatFacts, 'key' | 'title' | 'inci' | 'aliases'>>): FatNames {
  const given = new Map<string, Set<string>>();
  const short = new Map<string, Set<string>>();
  for (const { key, title, inci, aliases = [] } of fats) {
    const names = [
      key,
      title,
      title.replace(/\s*\(.*\)$/, ''),
      ...(inci === undefined ? [] : [inci]),
      ...aliases,
    ];
    for (const name of names) {
      const words = wordsIn(name);
      add(given, words.join(' '), key);
      const telling = withoutQualities(words);
      add(short, telling.join(' '), key);
      if (telling.length > 1 && endings.has(telling.at(-1) ?? ''))
        add(short, telling.slice(0, -1).join(' '), key);
    }
  }
  const names = new Map([...short, ...given].map(([name, keys]) => [name, [...keys]]));
  names.delete('');
  return names;
}

function add(names: Map<string, Set<string>>, name: string, key: string): void {
  const keys = names.get(name);
  if (keys === undefined) names.set(name, new Set([key]));
  else keys.add(key);
}

function wordsIn(name: string): string[] {
  return name
    .split(/[^\p{L}\p{M}\d'’]/u)
    .filter((word) => word !== '')
    .map(foldedWord);
}
