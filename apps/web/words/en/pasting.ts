/** Texts of the box that a recipe is pasted into, and of the amounts of its fats. */
export const pasting = {
  title: 'Paste a recipe',
  text: 'Recipe, one ingredient a line',
  hint: 'Weights or per cent, as they stand. Fats are taken, honey, and milk, tea and the like by weight; lye and water are worked out.',
  example: 'Olive oil 60%\nCoconut oil 40%',
  read: 'Read it',
  found: (fats: number, look: number) =>
    `${fats === 1 ? '1 fat' : `${String(fats)} fats`} found, ${
      look === 0
        ? 'nothing to look at'
        : look === 1
          ? '1 line to look at'
          : `${String(look)} lines to look at`
    }.`,
  none: 'No fat found. Write one ingredient a line, with its amount behind it.',
  cut: 'The text is longer than can be read at once. What comes after the last line here is left out.',
  lines: 'What became of each line',
  line: (number: number) => `Line ${String(number)}`,
  taken: (fat: string, amount: string) => `${fat}, ${amount}`,
  use: (fats: number, others: number) => {
    const took = fats === 1 ? 'Take this fat' : `Take these ${String(fats)} fats`;
    return others === 0
      ? took
      : `${took} and ${others === 1 ? '1 other ingredient' : `${String(others)} other ingredients`}`;
  },
  replaces: 'They replace the fats that stand in the recipe now.',
  isIt: 'Is it one of these?',
  orIs: 'Or is it:',
  outcomes: {
    'unknown-fat': 'No fat of this name.',
    'other-sort':
      'Left out: the other fats are told in another way. Write all in weights or all in per cent.',
    'not-understood': 'Not an ingredient with an amount.',
    'too-long': 'Left out: the line is too long.',
    'too-many-fats': 'Left out: a recipe holds 30 fats.',
  },
  noAmount: {
    none: (fat: string) => `${fat}: the amount is missing.`,
    'no-unit': (fat: string) => `${fat}: write the unit or % behind the number.`,
    'by-volume': (fat: string) => `${fat}: told by volume. Weigh it and write the weight.`,
    'out-of-range': (fat: string) => `${fat}: the amount is 0 or too large.`,
  },
  others: {
    lye: 'Lye: not taken. It is worked out below from the fats.',
    water: 'Water: not taken. It is worked out below.',
    fragrance: 'Scent: not taken. Add it below with the supplier’s limit.',
    setting: 'A setting: not taken. Set it below.',
    total: 'A sum: not taken.',
    other: 'Not a fat: not taken. Add it below.',
  },
  doubts: {
    thousands: 'Check the amount: the point or comma can be read in two ways.',
    'two-amounts': 'Check the amount: the line names two, and the first counts.',
    'extra-number': 'Check the amount: another number stands in the line.',
    'part-of-name': 'Check the fat: other words stand in the line.',
    'other-fats': 'Check the fat: the name means more than one.',
  },
  amountsIn: 'Amounts of the fats in',
  sorts: { percent: 'shares', grams: 'weights' },
  weight: 'Weight',
  total: (mass: string) => `Together ${mass}`,
  size: 'Batch is made for',
  sizes: { pieces: 'the pieces of a run', fats: 'a weight of all fats', fat: 'what is left of one fat' },
  sizeFats: 'Weight of all fats',
  sizeFat: 'Fat that is left',
  sizeFatGrams: 'Weight of it to use',
  sizeHints: {
    pieces: 'As much as moulds and count take.',
    fats: 'However many pieces that makes.',
    fat: 'The other fats follow it.',
  },
};

export type PastingWords = typeof pasting;
