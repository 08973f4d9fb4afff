import { valueAt, type Value } from '../../form/values.js';
import { keysAt } from '../keys-in.js';
import { newKey } from '../new-key.js';
import type { ReadRecipeText } from './read-pasted.js';

/**
 * Additions of a recipe with those that a pasted text names: one of the kind that stands there already gets the new share.
 * @param titles by kind, in the language of the page
 */
export function withAdditions(
  lines: readonly Value[],
  read: ReadRecipeText['additions'],
  titles: Readonly<Record<ReadRecipeText['additions'][number]['kind'], string>>,
): readonly Value[] {
  return read.reduce<readonly Value[]>((all, { kind, percent }) => {
    const at = all.findIndex((line) => valueAt(line, ['kind']) === kind);
    if (at >= 0) return all.map((line, i) => (i === at ? { ...(line as object), percent } : line));
    return [...all, { key: newKey(kind, keysAt(all, [])), title: titles[kind], kind, percent }];
  }, lines);
}
