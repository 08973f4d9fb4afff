import type { Message, Risk } from '#contract';
import { amountsIn } from './format/amounts.js';
import { materials } from './en/materials.js';
import { lengthsWith } from './format/lengths.js';
import { readsWith, titledWith } from './format/reads.js';
import { timesIn } from './format/times.js';
import type { Reader } from './reader.js';
import type { Texts, Words } from './words.js';

/** @param words those of the reader's language */
export function textsFor({ language, units, timeZone }: Reader, words: Words): Texts {
  const locale = language === 'de' ? 'de-DE' : 'en-GB';
  const amounts = amountsIn(language, units);
  const list = (type: 'conjunction' | 'disjunction') => {
    const format = new Intl.ListFormat(locale, { type });
    return (items: readonly string[]): string => format.format(items);
  };
  const texts: Texts = {
    language,
    names: words.names,
    ...words.phrases,
    ...timesIn(locale, timeZone),
    ...amounts,
    ...lengthsWith(words.phrases, amounts.number),
    read: readsWith(words.names, amounts),
    titled: titledWith(words.names, materials),
    behaviourOf: (fat, english) =>
      (words.names.fatBehaviours[fat] ?? english).replaceAll(/(\d+) °C/g, (_, celsius) =>
        amounts.temperature(Number(celsius)),
      ),
    and: list('conjunction'),
    or: list('disjunction'),
    of: (told) => {
      const say = words.messages[told.code] as (told: Message, texts: Texts) => string;
      // A day that is abbreviated ends with a full stop, in German, and so does the sentence.
      return say(told, texts).replace(/\.\.(?=\s|$)/g, '.');
    },
    remedyOf: (risk) => {
      const say = words.riskRemedies[risk.code] as (risk: Risk, texts: Texts) => string;
      return say(risk, texts);
    },
  };
  return texts;
}
