import type { PartLabel } from '#contract';
import type { Texts } from './words.js';

/**
 * A list of ingredients as a label has it: INCI names, which are in no language, with the allergens before the colourants.
 * What has no such name stands in quotes, as its maker calls it.
 */
export function ingredientsText(
  list: PartLabel['asPutIn'],
  { allergens }: Pick<PartLabel, 'allergens'>,
  { quoted, titled }: Pick<Texts, 'quoted' | 'titled'>,
): string {
  const nameOf = ({ inci, key, title }: PartLabel['asPutIn'][number]): string =>
    inci ?? quoted(titled(key, title));
  return [
    ...list.filter(({ isColourant }) => isColourant !== true).map(nameOf),
    ...allergens.map(({ name }) => name),
    ...list.filter(({ isColourant }) => isColourant === true).map(nameOf),
  ].join(', ');
}
