import type { Texts } from '../words.js';

/** A stretch of time: `Sat 28 Nov, 14:00 to 15:00`, with both days where they differ. */
export function spanText({ from, to }: { readonly from: string; readonly to: string }, texts: Texts): string {
  return texts.range(texts.dayTime(from), texts.timeFrom(from, to));
}
