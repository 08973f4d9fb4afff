/** Fetched when it is needed: the fats are larger than the form. */
import { fatTable, fromSheet, readRecipeText, type ReadRecipeText } from '#chemistry';
import type { Fat } from '#contract';

export type { LineOutcome, ReadLine, ReadRecipeText, TextAmount, TextFat } from '#chemistry';

/** What stands in a pasted text, own fats included. @param chosen fats for lines in doubt, by line */
export function readPasted(
  text: string,
  own: readonly Fat[],
  chosen: ReadonlyMap<number, string>,
): ReadRecipeText {
  return readRecipeText(text, [...fatTable(own.map(fromSheet)).values()], chosen);
}
