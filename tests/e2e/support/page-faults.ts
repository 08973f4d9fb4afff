import type { UnitSystem } from '#units';
import type { Language } from '#words';
import { settings as de } from '../../../apps/web/words/de/settings.js';
import { settings as en } from '../../../apps/web/words/en/settings.js';
import { foreignIn } from '../../support/one-language.js';

/**
 * What is in no language: figures of suppliers’ sheets know no other units; addresses, names of time zones, and numbers of
 * sections.
 */
const NEUTRAL =
  /mg KOH\/g|mg\/g|g\/m[Ll](\/°C)?|g\/100 g|https?:\S+|\p{Lu}\p{L}+\/\p{Lu}\p{L}+|(section|Abschnitt) [\d.]+/gu;

/** A field has its unit’s sign behind it, and a hint its name; neither stands beside a number. */
const units: Readonly<Record<UnitSystem, RegExp>> = {
  metric:
    /(^|[^\p{L}])(kg|g|m[lL]|mm²?|cm²?|°C|Gramm|Milliliter|Celsius|grams?|millilitres?)(?=$|[^\p{L}²])/u,
  us: /(^|[^\p{L}])(lb|oz|fl oz|in²|°F|Unzen?|Fahrenheit|ounces?)(?=$|[^\p{L}])|^in$/u,
};

/** Decimals and per cent as the other language writes them. */
const numbers: Readonly<Record<Language, RegExp>> = {
  de: /(?<![\d.])\d+\.\d{1,2}(?![\d.])|\d%/,
  en: /(?<![\d,])\d+,\d{1,2}(?![\d,])|\d\s%/,
};

/** Whoever chooses among systems of units has to be told their names. */
const choices = new Set([de, en].flatMap(({ metric, us }) => [metric, us]));

/**
 * What is wrong with the texts of a page, a line each.
 * @param keys of things that have a title, so that no reader need know their keys
 */
export function faultsIn(
  texts: readonly string[],
  language: Language,
  system: UnitSystem,
  keys: readonly string[],
): string[] {
  const other = units[system === 'us' ? 'metric' : 'us'];
  return texts.flatMap((text) => {
    if (choices.has(text)) return [];
    const read = text.replaceAll(NEUTRAL, '');
    const key = keys.find((each) => read.includes(each));
    const found = [
      ...foreignIn(read, { language, units: system }),
      other.exec(read)?.[0],
      numbers[language].exec(read)?.[0],
      read.includes('±') ? '±' : undefined,
      key,
    ].filter((each) => each !== undefined);
    return found.map((each) => `${each} in “${text.slice(0, 200)}”`);
  });
}
