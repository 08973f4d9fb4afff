import type { HeatNote } from '#contract';
import type { Texts } from '../words.js';

/** What the card of its heat says would help; where there is none of that, what helps in general. */
export function adviceOr(advice: readonly HeatNote[] | undefined, texts: Texts, usual: string): string {
  const said = (advice ?? []).map((note) => texts.of(note));
  return said.length > 0 ? said.join(' ') : usual;
}
