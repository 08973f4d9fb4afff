import type { UnitSystem } from '#units';
import { vocabulary, wordsIn, type Language } from './vocabulary.js';

/** How a text ought to be written. */
export interface Wanted {
  readonly language: Language;
  readonly units: UnitSystem;
}

/** Words that one language has and the other has not, also where a table of the other should hold a sentence of it. */
const COMMON: Readonly<Record<Language, ReadonlySet<string>>> = {
  en: new Set(
    'the of with is are and at your this that these those than before after until from for by to no not any it its which there they what when where each every only can cannot has have been would should on or if but more less most least'.split(
      ' ',
    ),
  ),
  de: new Set(
    'der die das dem den des und mit ist sind wird werden nicht kein keine mindestens höchstens ihr ihre ihren von vom bis für auf bei nach aus zu zum zur im als auch nur wenn weil dass sie ein eine einen einer eines oder noch über unter vor'.split(
      ' ',
    ),
  ),
};

const METRIC = /\d\s?(?:mg|g|kg|ml|mL|l|mm|cm|m|mm²|cm²|°\s?C)(?![\p{L}/²])/gu;
// “4 in 10” is no length, nor is “18:10 in the evening”.
const US =
  /\d\s?(?:oz|fl oz|lb|in²|in(?=\s?(?:[.,;:)×]|$(?!\s*\d)|long|wide|thick|by))|Zoll|°\s?F)(?!\p{L})/gmu;
/** Figures of suppliers’ sheets know no other units; a salt is sold as a solution of so many g in 100 g. */
const SHEET_FIGURES = /\d\s?(?:mg KOH\/g|g\/mL|g\/100 g)/gu;
/** What stands there when a sentence was not made, and words of the method that no sentence needs. */
const UNMADE = /undefined|\[object|NaN|\bnull\b|[{}]|standard error|\bbands\b/g;

/**
 * What is wrong with a text that people read: words of another language, figures in another system of units, what looks
 * like a sentence that was not made. Quoted titles are the maker's and may be in any language.
 * @param names titles that stand without quotes, and are left out of what is read
 * @returns each find with what stands around it
 */
export function foreignIn(
  text: string,
  { language, units }: Wanted,
  names: readonly string[] = [],
): string[] {
  const read = withoutNames(text, names);
  const signs = units === 'metric' ? US : METRIC;
  return [
    ...foreignWords(read, language).map((word) => around(read, word)),
    ...[...read.replace(SHEET_FIGURES, '').matchAll(signs)].map(([figure]) => around(read, figure)),
    ...[...read.matchAll(UNMADE)].map(([sign]) => around(read, sign)),
  ];
}

/** Words of a text that only the other language has. */
function foreignWords(text: string, language: Language): string[] {
  const other = language === 'en' ? 'de' : 'en';
  const [own, foreign] = [vocabulary(language), vocabulary(other)];
  const found = wordsIn(text).filter(
    (word) => COMMON[other].has(word) || (foreign.has(word) && !own.has(word)),
  );
  return [...new Set(found)];
}

/** Longest first, so that no name is left over from one that it is the beginning of. */
function withoutNames(text: string, names: readonly string[]): string {
  const longestFirst = [...new Set(names)].filter((name) => name !== '').sort((a, b) => b.length - a.length);
  const quoted = text.replace(/„[^“]*“/g, '„“').replace(/“[^”]*”/g, '“”');
  return longestFirst.reduce((rest, name) => rest.replaceAll(name, '…'), quoted);
}

function around(text: string, found: string): string {
  const at = text.search(
    new RegExp(`(?<!\\p{L})${found.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')}(?!\\p{L})`, 'iu'),
  );
  const context = text.slice(Math.max(0, at - 40), at + found.length + 40).replace(/\s+/g, ' ');
  return `${found}: ${context.trim()}`;
}

/** What a document’s maker called things: every text under a key that holds such names. */
export function namesIn(document: unknown): string[] {
  const found: string[] = [];
  const see = (value: unknown, key: string): void => {
    if (typeof value === 'string') {
      if (/^(title|name|fragrance|supplier|note|equipment|.*Title)$/.test(key)) found.push(value);
    } else if (Array.isArray(value)) value.forEach((item) => see(item, key));
    else if (typeof value === 'object' && value !== null) {
      Object.entries(value).forEach(([name, item]) => see(item, name));
    }
  };
  see(document, '');
  return [...new Set(found)];
}
