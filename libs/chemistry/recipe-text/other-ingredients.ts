/** What stands in recipes beside fats. */
export type OtherIngredient = 'lye' | 'water' | 'fragrance' | 'other' | 'total' | 'setting';

/** Words that tell a line is of no fat, folded as `foldedWord` does; the first that a line holds decides. */
const words: Readonly<Record<OtherIngredient, readonly string[]>> = {
  lye: [
    ...[
      'naoh',
      'koh',
      'lye',
      'lauge',
      'natronlauge',
      'kalilauge',
      'natriumhydroxid',
      'kaliumhydroxid',
      'caustic',
    ],
    ...['hydroxide', 'hydroxid', 'atznatron', 'atzkali', 'aetznatron', 'aetzkali', 'potash', 'natron'],
  ],
  water: ['water', 'wasser', 'aqua', 'ice', 'eis', 'eiswurfel'],
  fragrance: [
    ...[
      'fragrance',
      'essential',
      'eo',
      'fo',
      'parfum',
      'perfume',
      'duft',
      'duftol',
      'parfumol',
      'atherisches',
    ],
    ...['atherische', 'atherisch', 'scent', 'aroma'],
  ],
  setting: [
    ...[
      'superfat',
      'uberfettung',
      'uf',
      'concentration',
      'konzentration',
      'ratio',
      'discount',
      'laugenuberschuss',
    ],
  ],
  total: ['total', 'totals', 'sum', 'summe', 'gesamt', 'gesamtfett', 'gesamtfettmenge', 'insgesamt', 'gfm'],
  other: [
    ...[
      'salt',
      'salz',
      'sugar',
      'zucker',
      'honey',
      'honig',
      'clay',
      'tonerde',
      'mica',
      'pigment',
      'colour',
      'color',
    ],
    ...[
      'farbe',
      'oxide',
      'oxid',
      'titanium',
      'charcoal',
      'aktivkohle',
      'citric',
      'zitronensaure',
      'lactate',
      'laktat',
    ],
    ...[
      'milk',
      'milch',
      'oats',
      'hafer',
      'glycerin',
      'glycerine',
      'vitamin',
      'tocopherol',
      'seide',
      'silk',
      'powder',
    ],
    ...['pulver', 'vinegar', 'essig', 'coffee', 'kaffee', 'tussah', 'chelator', 'edta'],
  ],
};

const byWord = new Map(
  Object.entries(words).flatMap(([kind, list]) =>
    list.map((word) => [word, kind as OtherIngredient] as const),
  ),
);

/** @param folded words of a line @returns undefined where none of them tells */
export function otherIngredient(folded: readonly string[]): OtherIngredient | undefined {
  const told = folded.flatMap((word) => byWord.get(word) ?? []);
  // “Lye concentration 33 %” and “total lye” are no lye to weigh.
  return told.find((kind) => kind === 'setting' || kind === 'total') ?? told[0];
}

/** What is read as an addition to the batter, by what it is called. */
export type NamedAddition = 'honey';
const additions: ReadonlyMap<string, NamedAddition> = new Map([
  ['honey', 'honey'],
  ['honig', 'honey'],
  ['bienenhonig', 'honey'],
]);

/** @param folded words of a line without its numbers @returns undefined where a word of another ingredient stands beside, such as “fragrance” */
export function namedAddition(folded: readonly string[]): NamedAddition | undefined {
  const named = folded.flatMap((word) => additions.get(word) ?? []);
  const others = folded.filter((word) => !additions.has(word));
  return otherIngredient(others) === undefined ? named[0] : undefined;
}
