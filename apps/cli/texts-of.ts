import { textsFor, withTexts, type Reader, type Texts } from '#words';
import { wordsOf } from '#words/all';
import type { ReaderOptions } from './arguments.js';

/** Sentences in the language and units that the command line asks for, and in the zone of a document. */
export function textsOf({ language, units }: ReaderOptions, timeZone: string): Texts {
  return textsFor({ language, units, timeZone }, wordsOf[language]);
}

/** A document as `--json` prints it: every message with its sentence beside it. */
export function jsonWithTexts(document: unknown, { language, units }: ReaderOptions): string {
  const reader: Reader = { language, units, timeZone: 'UTC' };
  return `${JSON.stringify(withTexts(document, reader, wordsOf[language]), null, 2)}\n`;
}
