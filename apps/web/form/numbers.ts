import type { Language } from '../words/words.js';

/** Decimals are written with this; a single mark before just three digits could divide thousands, and is refused. */
const decimals: Record<Language, string> = { en: '.', de: ',' };

/**
 * A number as a person types it. Both marks are read where no doubt is left: “2,5” is 2.5 in English too, but
 * “1,000” is refused there rather than read as 1.
 * @returns undefined when the text is no number, or could be two
 */
export function readNumber(text: string, language: Language): number | undefined {
  const plain = text.trim().replaceAll('−', '-');
  const parts = /^(-?\d*)(?:([.,])(\d+))?$/.exec(plain);
  if (parts === null) return undefined;
  const [, whole = '', mark, rest = ''] = parts;
  if (mark === undefined) return /\d/.test(whole) ? Number(whole) : undefined;
  if (mark !== decimals[language] && rest.length === 3 && /[1-9]/.test(whole)) return undefined;
  return Number(`${whole}.${rest}`);
}

/** As it stands in a field: no dividers of thousands, six decimals at most. */
export function writeNumber(value: number, language: Language): string {
  return String(Number(value.toFixed(6))).replace('.', decimals[language]);
}
