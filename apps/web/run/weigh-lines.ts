import type { Words } from '../words/words.js';
import type { PartAmounts } from './use-sheet.js';

/** One thing to weigh. */
export interface WeighLine {
  /** The same in every language, and of this line alone in its group. */
  readonly key: string;
  readonly title: string;
  /** Grams. */
  readonly massG: number;
  /** What it is stirred into first. */
  readonly carrier?: { readonly kind: 'fat' | 'water' | 'glycerol'; readonly massG: number } | undefined;
}

/** What is weighed together; lye apart, as that is where the caution stands. */
export interface WeighGroup {
  readonly kind: 'fats' | 'lye' | 'batter';
  readonly lines: readonly WeighLine[];
  readonly totalG?: number;
}

/**
 * What a batch is weighed from, in the order of the work: fats, lye, and what goes into the batter.
 * @param titled what a fat or acid is called, by its key and title
 */
export function weighGroups(
  { batch }: Pick<PartAmounts, 'batch'>,
  words: Words['run']['sheet'],
  titled: (key: string, title: string) => string,
): WeighGroup[] {
  if (batch === undefined) return [];
  const liquidsInto = (place: 'lye' | 'batter'): WeighLine[] =>
    (batch.liquids ?? [])
      .filter(({ addedTo }) => addedTo === place)
      .map(({ key, title, massG }) => ({ key, title: titled(key, title), massG }));
  const some = (lines: readonly WeighLine[]): WeighLine[] => lines.filter(({ massG }) => massG > 0);
  const groups: WeighGroup[] = [
    {
      kind: 'fats',
      lines: some(
        batch.fats.map(({ fat, title, massG }) => ({ key: fat, title: titled(fat, title), massG })),
      ),
      totalG: batch.fatsG,
    },
    {
      kind: 'lye',
      lines: some([
        { key: 'water', title: words.water, massG: batch.stock?.waterG ?? batch.waterG },
        ...liquidsInto('lye'),
        batch.stock === undefined
          ? { key: 'naoh', title: words.naoh, massG: batch.naohG }
          : {
              key: 'naoh-solution',
              title: words.stock(`${String(batch.stock.percent)} %`),
              massG: batch.stock.massG,
            },
        { key: 'koh', title: words.koh, massG: batch.kohG },
        ...batch.acids.map(({ key, title, massG }) => ({ key, title: titled(key, title), massG })),
        { key: 'sodium-lactate', title: words.lactate, massG: batch.sodiumLactateG },
        { key: 'salt', title: words.salt, massG: batch.saltG },
        { key: 'sugar', title: words.sugar, massG: batch.sugarG },
      ]),
    },
    {
      kind: 'batter',
      lines: some([...liquidsInto('batter'), ...batch.fragrances, ...batch.colourants, ...batch.additions]),
    },
  ];
  return groups.filter(({ lines }) => lines.length > 0);
}
