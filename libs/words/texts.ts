import type { Message, Risk } from '#contract';
import { acceptedWith } from './format/accepted.js';
import { amountsIn } from './format/amounts.js';
import { lengthsWith } from './format/lengths.js';
import { evidenceWith, readsWith, titledWith } from './format/reads.js';
import { timesIn } from './format/times.js';
import { issueText } from './issue-text.js';
import type { Reader } from './reader.js';
import type { Texts, Words } from './words.js';

const made = new WeakMap<Words, Map<string, Texts>>();

/**
 * Those of a reader are made once, as pages ask for every sentence and answers for every document with a zone of its own.
 * @param words those of the reader's language
 */
export function textsFor(reader: Reader, words: Words): Texts {
  const ofWords = made.get(words) ?? new Map<string, Texts>();
  made.set(words, ofWords);
  const key = `${reader.language} ${reader.units} ${reader.timeZone}`;
  let texts = ofWords.get(key);
  if (texts === undefined) {
    texts = makeTexts(reader, words);
    ofWords.set(key, texts);
  }
  return texts;
}

function makeTexts({ language, units, timeZone }: Reader, words: Words): Texts {
  const locale = language === 'de' ? 'de-DE' : 'en-GB';
  const amounts = amountsIn(language, units);
  const list = (type: 'conjunction' | 'disjunction') => {
    const format = new Intl.ListFormat(locale, { type });
    return (items: readonly string[]): string => format.format(items);
  };
  const times = timesIn(locale, timeZone);
  const lengths = lengthsWith(words.phrases, amounts.number);
  const or = list('disjunction');
  const writers = { ...amounts, ...lengths, range: words.phrases.range, dayTime: times.dayTime, or };
  /** A text of a table, with its temperatures in the reader's unit. */
  const inDegrees = (text: string): string =>
    text.replaceAll(/(\d+) °C/g, (_, celsius) => amounts.temperature(Number(celsius)));
  const texts: Texts = {
    language,
    names: { ...words.names, evidence: evidenceWith(words.names, inDegrees) },
    ...words.phrases,
    ...times,
    ...amounts,
    ...lengths,
    ...acceptedWith(words.accepted, writers),
    read: readsWith(words.names, amounts),
    titled: titledWith(words.names),
    behaviourOf: (fat, english) => inDegrees(words.names.fatBehaviours[fat] ?? english),
    and: list('conjunction'),
    or,
    of: (told) => {
      const say = words.messages[told.code] as (told: Message, texts: Texts) => string;
      // A day that is abbreviated ends with a full stop, in German, and so does the sentence.
      return say(told, texts).replace(/\.\.(?=\s|$)/g, '.');
    },
    remedyOf: (risk) => {
      const say = words.riskRemedies[risk.code] as (risk: Risk, texts: Texts) => string;
      return say(risk, texts);
    },
    issue: (issue) => issueText(issue, words.issues, words.accepted, texts),
    fieldName: (path) => {
      const last = path.findLast((step) => typeof step === 'string');
      return last !== undefined && Object.hasOwn(words.fields, last) ? words.fields[last] : undefined;
    },
  };
  return texts;
}
