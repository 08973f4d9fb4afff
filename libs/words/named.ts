import type { PartReference, SoapState, StageReference } from '#contract';
import type { Texts } from './words.js';

/** A stage, a lot or a part by the title that the maker gave it: `“Sand layer”`, `“Sand layer” (attempt 2)`. */
export function named(
  { title, attempt = 1 }: Pick<StageReference | PartReference, 'title'> & { readonly attempt?: number },
  texts: Texts,
): string {
  return attempt === 1 ? texts.quoted(title) : `${texts.quoted(title)} (${texts.attempt(String(attempt))})`;
}

/** What has a state, within a sentence: the part, or the lye or fats for it. */
export function bearerWithin(part: PartReference, state: SoapState, texts: Texts): string {
  const { of = (bare: string) => bare } = texts.names.states[state];
  return of(named(part, texts));
}

/** The same as a sentence begins. */
export function bearerOf(part: PartReference, state: SoapState, texts: Texts): string {
  const told = bearerWithin(part, state, texts);
  return told.charAt(0).toUpperCase() + told.slice(1);
}

/** What something is until a state comes that closes a window; fits “the base stays …”. */
export function untilOf(state: SoapState, texts: Texts): string {
  const { is, until = is } = texts.names.states[state];
  return until;
}

/** From when to when something may start: `Tue 1 Dec, 02:10 to 06:40`; open-ended where nothing closes it. */
export function stretch(from: string, to: string | null, texts: Texts): string {
  const first = texts.dayTime(from);
  if (to === null) return texts.fromOn(first);
  if (from === to) return texts.onlyAt(first);
  const sameDay = texts.day(from) === texts.day(to);
  // Where the clock goes back between the two, the same time of day can come twice.
  const plain = sameDay && texts.time(from) < texts.time(to);
  return texts.range(first, plain ? texts.time(to) : texts.dayTime(to));
}
