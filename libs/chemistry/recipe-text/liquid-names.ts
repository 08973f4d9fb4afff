import { shippedLiquids } from '../liquids/liquid-table.js';
import { fatNames, withoutQualities } from './fat-names.js';

const names = fatNames(shippedLiquids);

/** Said of many liquids, and telling none of them apart, beside what is said of fats. */
const qualities = new Set([
  ...[
    'frozen',
    'cubes',
    'ice',
    'cold',
    'boiled',
    'flat',
    'strong',
    'plain',
    'unsweetened',
    'canned',
    'full',
    'brewed',
  ],
  ...[
    'gefroren',
    'gefrorene',
    'gefrorener',
    'kalt',
    'kalte',
    'frisch',
    'frische',
    'stark',
    'starker',
    'ungesusst',
  ],
  ...['ungesusste', 'schal', 'schales', 'als', 'dose', 'flussig'],
]);

/**
 * The liquid that a line names: by all of its words, or by all but those of quality. A name among other words is none, as
 * “goat milk powder” and “carrot oil” are not liquids.
 * @param words folded, without numbers
 */
export function liquidIn(words: readonly string[]): string | undefined {
  const telling = withoutQualities(words.filter((word) => !qualities.has(word)));
  for (const each of [words, telling]) {
    const [key] = names.get(each.join(' ')) ?? [];
    if (key !== undefined) return key;
  }
  return undefined;
}
